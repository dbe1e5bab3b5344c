import { OutputError } from '../../model/output';
import { visibleText } from '../../model/text/visibleText';

/** Why one instrument cannot be built, as a sentence for a person. */
export class BuildError extends Error {}

/** What is said of an instrument, or a target of it, that could not be built. */
export function reasonOf(error: unknown): string {
  const message = visibleText(error instanceof Error ? error.message : String(error));
  if (error instanceof BuildError) return message;
  if (error instanceof OutputError) return `It cannot be written: ${message}`;
  return `It could not be built: ${message}`;
}
