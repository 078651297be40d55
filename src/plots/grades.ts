/** Octane numbers of the grades posted on pumps in the United States, (R+M)/2. */
export const postedGrades = [85, 87, 89, 91, 93] as const;

/** How far off the requirement of a single engine may be, octane numbers: common practice, no source. */
export const octaneScatter = 7;
