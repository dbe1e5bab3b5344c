/** Why one instrument cannot be built, as a sentence for a person. */
export class BuildError extends Error {}
