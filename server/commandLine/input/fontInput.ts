import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { nameOf } from '../../model/paths';
import { sfzNotation } from '../../sfz/notation';
import type { Preset } from '../../soundfont/font';
import { fontsAmong } from '../../soundfont/fontFiles';
import type { FontView } from '../../soundfont/regions/fontView';
import type { PresetTextOptions } from '../../soundfont/regions/presetText';
import { CommandError } from '../commandError';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';

/** The options of every command that reads SoundFonts. */
export const fontOptions = { attenuation: ['1', '0.4'] } as const;

/** A SoundFont named on the command line, with the presets that are meant. */
export interface FontInput {
  /** As the person wrote it, without the preset. */
  name: string;
  path: string;
  view: FontView;
  /** The presets that were named, or all of them. */
  presets: readonly Preset[];
  /** Whether one preset was named. */
  isNamed: boolean;
}

/** A preset as the text of an instrument. */
export interface PresetInput {
  name: string;
  path: string;
  text: string;
  notation: Notation;
  notes: readonly ConversionNote[];
}

const withPreset = /^(.+)#(\d+):(\d+)$/;
/** Presets that a message lists. */
const mostListed = 12;

/**
 * The SoundFont that `FILE` or `FILE#bank:preset` names; `undefined` where it names another kind of file. Fails with a
 * {@link CommandError} where the font cannot be read or has no such preset.
 */
export async function readFontInput(terminal: Terminal, written: string): Promise<FontInput | undefined> {
  const [, before = '', bank, program] = withPreset.exec(written) ?? [];
  const isWhole = before === '' || (await terminal.files.stat(absolutePath(terminal, written))) !== undefined;
  const name = isWhole ? written : before;
  const path = absolutePath(terminal, name);
  const found = await fontsAmong(terminal.files).at(path);
  if (found.kind === 'other') return undefined;
  if (found.kind === 'unreadable') throw new CommandError(`${name}: ${found.reason}`);
  const { view } = found;
  if (isWhole) return { name, path, view, presets: view.presets, isNamed: false };
  const { presetAt } = await import('../../soundfont/regions/fontView');
  const preset = presetAt(view, Number(bank), Number(program));
  if (!preset)
    throw new CommandError(
      `${name}: there is no preset ${bank}:${program}; there are ${listed(view.presets)}`,
    );
  return { name, path, view, presets: [preset], isNamed: true };
}

/** The one preset that is meant; of several the first, which is said on standard error. */
export function onePreset(terminal: Terminal, { name, presets }: FontInput): Preset {
  const [first] = presets as [Preset, ...Preset[]];
  if (presets.length > 1)
    terminal.error(
      `zonewright: ${name} has ${presets.length} presets; this is ${titleOf(first)}; name another as ${name}#bank:preset: ${listed(presets)}\n`,
    );
  return first;
}

/** A preset as the text of an instrument beside the font, its samples inside the font, or in another folder. */
export function presetInput(
  { name, path, view }: FontInput,
  preset: Preset,
  options: Readonly<Record<string, string | undefined>> = {},
  samplePath: PresetTextOptions['samplePath'] = (file) => `${nameOf(path)}/${file.name}`,
): PresetInput {
  const attenuation: PresetTextOptions['attenuation'] = options.attenuation === '0.4' ? 0.4 : 1;
  const { text, notes } = view.text(preset, nameOf(path), { samplePath, attenuation });
  const place = `#${preset.bank}:${preset.program}`;
  return { name: name + place, path: path + place, text, notation: sfzNotation, notes };
}

function titleOf({ bank, program, name }: Preset): string {
  return `${bank}:${program} ${name}`.trim();
}

function listed(presets: readonly Preset[]): string {
  const more = presets.length - mostListed;
  return presets.slice(0, mostListed).map(titleOf).join(', ') + (more > 0 ? ` and ${more} more` : '');
}
