import type { Files } from '../model/files';
import { nameOf } from '../model/paths';
import { Source } from '../model/text/source';
import type { JsonProblem } from '../vocabulary/jsonTree';
import { readJson } from '../vocabulary/jsonTree';
import { readWholeText } from '../workspace/files/readWhole';
import type { InstrumentSettings } from './libraryFile';
import { settingsEnding } from './libraryFile';
import { besideShape } from './libraryShape';
import { readShape } from './readShape';

/**
 * The settings in a file beside a source, such as `felt.zonewright.json` beside `felt.tsv`; `undefined` where there is none.
 * What makes no sense in it is told in `problems`.
 */
export async function settingsBeside(
  files: Files,
  source: string,
  problems: string[],
): Promise<(InstrumentSettings & { name?: string }) | undefined> {
  const path = source.replace(/(\.instrument)?\.[^./]*$/, '') + settingsEnding;
  const whole = await readWholeText(files, path);
  if (whole.kind !== 'text') return undefined;
  const { root, problem } = readJson(whole.text);
  const faults: JsonProblem[] = problem ? [problem] : [];
  const settings = root && readShape(root, besideShape, faults);
  const text = new Source(path, whole.text);
  for (const { message, start } of faults)
    problems.push(`${nameOf(path)}, line ${text.positionAt(start).line}: ${message}`);
  return settings as (InstrumentSettings & { name?: string }) | undefined;
}
