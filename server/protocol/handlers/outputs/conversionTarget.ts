import { templateOutput } from '../../../library/templates/templateOutput';
import type { Notation } from '../../../model/notation';
import type { Output } from '../../../model/output';
import { nameOf } from '../../../model/paths';
import { parseVocabulary } from '../../../vocabulary/parseVocabulary';
import { vocabularyNotation } from '../../../vocabulary/vocabularyNotation';
import { readWholeText } from '../../../workspace/files/readWhole';
import { notations } from '../../../workspace/notations/notationOf';
import { notationOutput } from '../../../workspace/notations/notationOutput';
import { pathOfUri } from '../../conversion/uris';
import type { ConvertParams, ConvertResult, TemplateTarget } from '../../requests/conversionRequests';
import type { ServerContext } from '../../serverContext';

/** What an instrument is converted to. */
export interface ConversionTarget {
  notation: Notation;
  format: ConvertResult['format'];
  output: Output;
  /** Facts that a template turned out to have a place for and that are not known. */
  missingFacts: string[];
}

/** The target that a client asks for; or why there is none, as a sentence. */
export async function conversionTarget(
  server: ServerContext,
  to: ConvertParams['to'],
): Promise<ConversionTarget | { problem: string }> {
  const { samples } = server.documents;
  if (typeof to === 'string') {
    const notation = Object.hasOwn(notations, to) ? notations[to] : undefined;
    if (!notation) return { problem: `There is no notation "${to}".` };
    return { notation, format: to, output: notationOutput(notation, samples), missingFacts: [] };
  }
  if ('templateUri' in to) return template(server, to);
  const found = await textAt(server, to.vocabularyUri, 'vocabulary');
  if ('problem' in found) return found;
  const { vocabulary, problems } = parseVocabulary(found.text);
  if (!vocabulary)
    return {
      problem: `${nameOf(found.path)} holds no vocabulary: ${problems[0]?.message ?? 'it is empty.'}`,
    };
  const notation = vocabularyNotation(vocabulary);
  return { notation, format: 'vocabulary', output: notationOutput(notation, samples), missingFacts: [] };
}

async function template(
  server: ServerContext,
  { templateUri, facts }: TemplateTarget,
): Promise<ConversionTarget | { problem: string }> {
  const { samples, includes, notations: finder } = server.documents;
  const found = await textAt(server, templateUri, 'template');
  if ('problem' in found) return found;
  const { notation, vocabulary } = (await finder.find(found)) ?? {};
  if (!notation)
    return { problem: `${nameOf(found.path)} is neither SFZ nor XML with a region as an example.` };
  const missingFacts: string[] = [];
  const output = templateOutput(
    { ...found, notation },
    {
      ...{ includes, samples, factsOf: () => new Map(Object.entries(facts)) },
      onMissing: (names) => missingFacts.push(...names),
    },
  );
  return { notation, format: vocabulary ? 'vocabulary' : notation.format, output, missingFacts };
}

/** The text of a file, as it stands in the editor where it is open; or why there is none. */
async function textAt(
  { documents }: ServerContext,
  uri: string,
  what: string,
): Promise<{ path: string; text: string } | { problem: string }> {
  const path = pathOfUri(uri);
  if (path === undefined) return { problem: `The ${what} is not in a file.` };
  const open = documents.openDocument(path)?.getText();
  if (open !== undefined) return { path, text: open };
  const whole = await readWholeText(documents.files, path);
  return whole.kind === 'text' ? { path, text: whole.text } : { problem: `${nameOf(path)} cannot be read.` };
}
