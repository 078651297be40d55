/** What a requirement is good for, octane numbers: about two engines in three (common practice, no source). */
export const octaneError = 7;
