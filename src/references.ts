/** A published source. Cells and tests cite these, so a misspelt source does not compile. */
export interface Reference {
  readonly key: string;
  readonly text: string;
}

/** Where a formula or figure comes from: a source and a place in it, or common practice without a source. */
export interface Citation {
  readonly in: Reference | null;
  readonly at: string;
}

const reference = (key: string, text: string): Reference => ({ key, text });

export const heywood = reference(
  'heywood',
  'J. B. Heywood, Internal Combustion Engine Fundamentals, McGraw-Hill, 1988',
);
export const ashrae = reference('ashrae', 'ASHRAE Handbook: Fundamentals, 2017, ch. 1');
export const ussa76 = reference('ussa76', 'U.S. Standard Atmosphere, 1976 (ISO 2533)');
export const j1349 = reference('j1349', 'SAE J1349, Engine Power Test Code, June 1990');
export const j607 = reference('j607', 'SAE J607, Small Spark Ignition Engine Test Code');
export const din70020 = reference('din70020', 'DIN 70020, Kraftfahrzeugbau: allgemeine Begriffe');
export const iso1585 = reference('iso1585', 'ISO 1585:1992, Road vehicles: engine test code, net power');
export const anderson = reference('anderson', 'J. E. Anderson et al., SAE 2010-01-2094, 2010');
export const afdc = reference('afdc', 'U.S. Department of Energy, Alternative Fuels Data Center, fuel properties');
export const sae960497 = reference('sae960497', 'SAE 960497, 1996 (abstract)');
export const bowling = reference('bowling', 'B. Bowling, engine test correction notes, 1995');

export const taylor = reference(
  'taylor',
  'C. F. Taylor, The Internal-Combustion Engine in Theory and Practice, vol. 1, MIT Press, 1966',
);
export const fukutani = reference('fukutani', 'I. Fukutani and E. Watanabe, SAE 790484, 1979');
export const engelman = reference('engelman', 'H. W. Engelman, ASME 73-WA/DGP-14, 1973');
export const bell = reference('bell', 'A. G. Bell, Performance Tuning in Theory and Practice: Four Strokes, 1981');

export const cite = (source: Reference, at: string): Citation => ({ in: source, at });

/** A trade fact that no published source was found for; the page says so. */
export const common = (what: string): Citation => ({ in: null, at: what });
