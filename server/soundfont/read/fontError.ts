/** Says in a sentence why a file cannot be read as a SoundFont, and where. */
export class FontError extends Error {}
