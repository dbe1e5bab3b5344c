/** Says in a sentence why instruments cannot be written as a SoundFont, with the figure that is too great. */
export class WriteError extends Error {}
