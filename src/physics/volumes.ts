/**
 * Volume of a round opening, m3: a swept volume, a gasket's, a deck's.
 *
 * @param diameter m
 * @param height m; negative where the piston stands proud of the deck, and so is the volume
 */
export function cylinderVolume(diameter: number, height: number): number {
  return (Math.PI / 4) * diameter ** 2 * height;
}

/**
 * Volume of the gap around the top land, from the crown's edge down to the first ring, m3.
 *
 * @param bore m
 * @param landHeight from the crown to the first ring groove, m
 * @param diametralClearance bore less top-land diameter, cold, m; not the skirt's clearance, which is far smaller
 */
export function creviceVolume(bore: number, landHeight: number, diametralClearance: number): number {
  return cylinderVolume(bore, landHeight) - cylinderVolume(bore - diametralClearance, landHeight);
}

/**
 * Static compression ratio, volume at bottom over volume at top.
 *
 * @param swept swept volume of one cylinder, m3
 * @param clearance volume left above the piston at top dead center, m3
 * @throws RangeError when no clearance volume is left
 * Source: J. B. Heywood, 1988, eq. 2.1 (from memory).
 */
export function compressionRatio(swept: number, clearance: number): number {
  if (!(clearance > 0)) throw new RangeError('No volume is left above the piston at top dead center.');
  return (swept + clearance) / clearance; // eq. 2.1
}

/**
 * Mean piston speed, m/s.
 *
 * @param stroke m
 * @param speed crankshaft speed, rad/s
 * Source: J. B. Heywood, 1988, eq. 2.9 (from memory).
 */
export function meanPistonSpeed(stroke: number, speed: number): number {
  return (stroke * speed) / Math.PI; // eq. 2.9, 2 L N with N in turns per second
}
