import type { TextDocument } from 'vscode';
import { env, l10n, Uri, window } from 'vscode';
import type {
  ConvertParams,
  ConvertResult,
  TemplateTarget,
} from '../server/protocol/requests/conversionRequests';
import { mayHoldInstrument } from './languages';

/** Asks the server for a conversion; `undefined` where there is none, which was told. */
type Ask = (params: ConvertParams) => Promise<ConvertResult | undefined>;

/** What was asked for and what came of it. */
export interface TemplateConversion {
  params: ConvertParams;
  result: ConvertResult;
}

/** Asks for a template and puts the instrument of a document into it; facts that the template has a place for are asked for. */
export async function instrumentIntoTemplate(
  document: TextDocument,
  ask: Ask,
): Promise<TemplateConversion | undefined> {
  const template = await chosenTemplate(document.uri);
  if (!template) return undefined;
  const facts = { title: titleOf(document.uri) };
  return withFacts({ uri: document.uri.toString(), to: target(template, facts) }, template, facts, ask);
}

/** Asks for a template and puts a zone table, that in the clipboard where none is given, into it; its samples are looked up in the template's folder. */
export async function tableIntoTemplate(
  ask: Ask,
  given?: string,
): Promise<(TemplateConversion & { folder: Uri }) | undefined> {
  const table = given ?? (await env.clipboard.readText());
  if (table.trim() === '') {
    await window.showWarningMessage(l10n.t('The clipboard holds no text.'));
    return undefined;
  }
  const active = window.activeTextEditor?.document;
  const near = mayHoldInstrument(active) && !active.isUntitled ? active.uri : undefined;
  const template = await chosenTemplate(near);
  if (!template) return undefined;
  const place = near ?? template;
  const params = { uri: place.toString(), table, to: target(template, {}) };
  const done = await withFacts(params, template, {}, ask);
  return done && { ...done, folder: Uri.joinPath(place, '..') };
}

/** Converts, asks for the facts that are missing, and converts with those. */
async function withFacts(
  params: ConvertParams,
  template: Uri,
  facts: Record<string, string>,
  ask: Ask,
): Promise<TemplateConversion | undefined> {
  const result = await ask(params);
  if (!result || result.missingFacts.length === 0) return result && { params, result };
  const known = { ...facts };
  for (const name of result.missingFacts) {
    const value = await window.showInputBox({
      title: l10n.t('Convert into template'),
      prompt: l10n.t(
        'The template has a place for "{0}". What goes there? Leave it empty to keep it marked.',
        name,
      ),
      ...(known[name] !== undefined && { value: known[name] }),
    });
    if (value === undefined) return undefined;
    if (value.trim() !== '') known[name] = value.trim();
  }
  const again = { ...params, to: target(template, known) };
  const filled = await ask(again);
  return filled && { params: again, result: filled };
}

function target(template: Uri, facts: Record<string, string>): TemplateTarget {
  return { templateUri: template.toString(), facts };
}

async function chosenTemplate(near: Uri | undefined): Promise<Uri | undefined> {
  const chosen = await window.showOpenDialog({
    title: l10n.t('Template: an instrument text with examples'),
    openLabel: l10n.t('Use as template'),
    filters: { [l10n.t('Instrument text')]: ['sfz', 'xml'] },
    ...(near && { defaultUri: Uri.joinPath(near, '..') }),
  });
  return chosen?.[0];
}

function titleOf({ path }: Uri): string {
  return path.slice(path.lastIndexOf('/') + 1).replace(/(\.instrument)?\.\w+$/, '');
}
