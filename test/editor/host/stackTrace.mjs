import { readFileSync } from 'node:fs';
import { SourceMap } from 'node:module';
import { dirname, relative, resolve } from 'node:path';

/**
 * Gives a function that turns the places a failure names in the bundle of the tests into places in their sources, with
 * paths relative to the current folder, and leaves out the lines that say only how the test was run.
 */
export function sourcePlaces(bundle) {
  const map = new SourceMap(JSON.parse(readFileSync(`${bundle}.map`, 'utf8')));
  const sourcePlace = (line, column) => {
    const entry = map.findEntry(Number(line) - 1, Number(column) - 1);
    if (entry.originalSource === undefined) return undefined;
    const source = relative(process.cwd(), resolve(dirname(bundle), entry.originalSource));
    return `${source}:${entry.originalLine + 1}:${entry.originalColumn + 1}`;
  };
  return (message) =>
    message
      .split('\n')
      .map((line) =>
        line.replace(/\S*suite\.cjs:(\d+):(\d+)/, (place, row, column) => {
          const bracket = place.startsWith('(') ? '(' : '';
          return bracket + (sourcePlace(row, column) ?? place);
        }),
      )
      .filter((line) => !/^\s+at .*(node:internal|suite[\\/]runTests\.ts:)/.test(line))
      .join('\n');
}
