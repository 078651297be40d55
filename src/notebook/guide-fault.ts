/** What a guide's data has wrong, and in which step. */
export class GuideFault extends Error {}
