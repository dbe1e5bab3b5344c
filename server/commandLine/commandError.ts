/** Says in one line why a command cannot do what it was asked to; ends it with status 2. */
export class CommandError extends Error {}
