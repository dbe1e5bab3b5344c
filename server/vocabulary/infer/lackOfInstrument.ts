import { isAudioFileName } from '../../model/fileNames';
import { finish } from '../../model/steps';
import type { Survey } from './elements/survey';
import { surveyXml } from './elements/survey';
import { inferVocabulary } from './inferVocabulary';
import { isForeignRoot } from './instrumentConfidence';

const longestName = 60;

/**
 * What an XML text lacks to be an instrument, as a clause about `it` that says what was seen too; `undefined` where it is one or no
 * XML.
 */
export function lackOfInstrument(text: string): string | undefined {
  if (!/^\ufeff?\s*</.test(text.slice(0, 1000))) return undefined;
  const survey = finish(surveyXml(text));
  const { root } = survey;
  if (!root) return undefined;
  if (isForeignRoot(root)) {
    const named = firstFile(survey);
    const files = named === undefined ? 'no audio files' : `audio files such as "${shown(named)}"`;
    return `it is XML of another kind: its outermost element is <${shown(root.name)}>, as in other open formats; it has ${elementsOf(survey)}, and names ${files}`;
  }
  let lack: string | undefined;
  if (inferVocabulary(text, { path: 'a.xml', tell: (reason) => (lack ??= reason) })) return undefined;
  const file = firstFile(survey);
  if (file === undefined)
    return `it is XML that names no audio files; it has ${elementsOf(survey)}${lack ? `, and ${lack}` : ''}`;
  return `it is XML that names audio files such as "${shown(file)}", but ${lack ?? 'nothing that says which keys play them'}`;
}

function firstFile({ types }: Survey): string | undefined {
  for (const { attributes, text } of types)
    for (const site of [...attributes.values(), ...(text ? [text] : [])])
      for (const value of site.values) if (isAudioFileName(value.text)) return value.text;
  return undefined;
}

function elementsOf({ types }: Survey): string {
  const names = [...new Set(types.map(({ name }) => `<${shown(name)}>`))];
  return `${names.slice(0, 4).join(', ')}${names.length > 4 ? ' and others' : ''}`;
}

function shown(text: string): string {
  return text.length > longestName ? `${text.slice(0, longestName)}…` : text;
}
