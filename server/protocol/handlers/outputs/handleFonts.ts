import { notesPage } from '../../../features/notesPage';
import { folderOf, joinPath, nameOf } from '../../../model/paths';
import { lineNotes } from '../../../model/writing/lineNotes';
import { sfzNotation } from '../../../sfz/notation';
import type { Preset } from '../../../soundfont/font';
import { fontsAmong } from '../../../soundfont/fontFiles';
import type { FontView } from '../../../soundfont/regions/fontView';
import { presetAt } from '../../../soundfont/regions/fontView';
import { FileNames } from '../../../soundfont/regions/sampleFiles';
import type { AnswerRequest } from '../../answerLater';
import { stopIfCancelled } from '../../cancellation';
import { base64Of } from '../../conversion/base64';
import { fontFacts } from '../../conversion/fontFacts';
import { pathOfUri } from '../../conversion/uris';
import type { FontRefusal, FontText, FontTextParams, FontTextResult } from '../../requests/fontRequests';
import {
  FontPartRequest,
  FontRequest,
  FontSampleRequest,
  FontTextRequest,
  WriteFontRequest,
} from '../../requests/fontRequests';
import type { ServerContext } from '../../serverContext';
import { FontWriting } from './fontWriting';

/** Bytes of a sample that one answer gives at the most. */
const mostBytes = 1 << 22;

/** Answers the requests about SoundFonts. */
export function handleFonts(answer: AnswerRequest, { documents }: ServerContext): void {
  const { files } = documents;

  /** The font at a URI, or why there is none. */
  const fontAt = async (
    uri: string,
  ): Promise<{ path: string; view: FontView; bytes: number } | FontRefusal> => {
    const path = pathOfUri(uri);
    const found = path === undefined ? undefined : await fontsAmong(files).at(path);
    if (path === undefined || !found || found.kind === 'other')
      return { problem: 'This file is no SoundFont, or it cannot be read.' };
    if (found.kind === 'unreadable') return { problem: found.reason };
    return { path, view: found.view, bytes: (await files.stat(path))?.size ?? 0 };
  };

  answer(FontRequest.type, async ({ uri }, token) => {
    const font = await fontAt(uri);
    stopIfCancelled(token);
    return 'problem' in font ? font : fontFacts(font.view, font.bytes);
  });

  answer(FontTextRequest.type, async (params, token) => {
    const font = await fontAt(params.uri);
    stopIfCancelled(token);
    if ('problem' in font) return font;
    const { preset } = params;
    const presets = preset ? [presetAt(font.view, preset.bank, preset.program)] : [...font.view.presets];
    const known = presets.filter((one) => one !== undefined);
    if (known.length < presets.length) return { problem: 'The SoundFont has no such preset any more.' };
    return textsOf(font.view, font.path, known, params);
  });

  answer(FontSampleRequest.type, async ({ uri, name, start, length }) => {
    const path = pathOfUri(uri);
    const reader = path === undefined ? undefined : await files.open(joinPath(path, name));
    if (!reader) return {};
    try {
      return { data: base64Of(await reader.read(start, Math.min(length, mostBytes))) };
    } catch {
      return {};
    } finally {
      await reader.close();
    }
  });

  const writing = new FontWriting(documents);
  answer(WriteFontRequest.type, (params, token) => writing.begin(params, token));
  answer(FontPartRequest.type, ({ font }) => writing.next(font));
}

function textsOf(
  view: FontView,
  path: string,
  presets: readonly Preset[],
  { samples }: FontTextParams,
): FontTextResult {
  const used = new Map<string, number>();
  const names = new FileNames();
  const file = nameOf(path);
  const texts = presets.map((preset): FontText => {
    const { text, notes } = view.text(preset, file, {
      attenuation: 1,
      samplePath: (sample) => {
        used.set(sample.name, view.sampleBytes(sample));
        return joinPath(samples ?? file, sample.name);
      },
    });
    const instrument = sfzNotation.read(text, { path: joinPath(folderOf(path), 'preset.sfz') });
    const number = (value: number) => String(value).padStart(3, '0');
    const title = `${number(preset.bank)}-${number(preset.program)} ${preset.name}`;
    return { file: names.take(title, '.sfz'), text, notes: lineNotes(instrument, notes) };
  });
  const all = texts.flatMap((one) =>
    one.notes.map((note) => (texts.length === 1 ? note : { ...note, file: one.file })),
  );
  return {
    texts,
    samples: [...used].map(([name, bytes]) => ({ name, bytes })),
    page: notesPage(`Conversion notes for ${file}`, all),
  };
}
