import { isXmlSpace } from './characters';

/** The quote that opens the value which starts, behind any white space, at `start`; empty where the value has none. */
export function quoteBefore(text: string, start: number): string {
  let at = start - 1;
  while (at > 0 && isXmlSpace(text.charCodeAt(at))) at--;
  return text[at] === '"' || text[at] === "'" ? text[at] : '';
}
