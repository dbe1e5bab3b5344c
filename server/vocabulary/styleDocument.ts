/** One step of indentation in a text: the least by which a line with a tag is indented; two blanks where none is. */
export function unitOf(text: string): string {
  let unit: string | undefined;
  for (const [, indentation = ''] of text.slice(0, 20_000).matchAll(/[\r\n]([ \t]+)<[^/!?]/g)) {
    if (unit === undefined || indentation.length < unit.length) unit = indentation;
  }
  return unit ?? '  ';
}
