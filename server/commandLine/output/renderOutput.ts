import type { Instrument } from '../../model/instrument';
import { jsonText, visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import { keyText } from '../../model/wording/rangeWords';
import { playingChoices } from '../../playing/playingChoices';
import { choices } from '../../sound/choices';
import type { SoundProgram } from '../../sound/program/program';
import type { RenderReport } from '../../sound/render/renderParts';
import type { RegionPlace } from '../input/regionPlaces';
import { regionPlace } from '../input/regionPlaces';
import type { Terminal } from '../terminal';
import { shownPath } from '../terminalPaths';

/** Everything that a render has to tell. */
export interface RenderTold {
  terminal: Terminal;
  instrument: Instrument;
  program: SoundProgram;
  report: RenderReport;
  sampleRate: number;
}

/** A mean above −40 dB of full scale is told (common practice). */
const loudestMean = 0.01;

/** Notes of the report that are shown one by one. */
const mostNotes = 24;

/** What was played and what is not rendered, as JSON. */
export function renderJson(told: RenderTold): string {
  const { terminal, instrument, report, sampleRate } = told;
  const places = (regions: readonly number[]) =>
    regions.map((region) => regionPlace(terminal, instrument, region));
  const { peak } = report;
  const output = {
    sampleRate,
    frames: report.frames,
    notes: report.notes.map(({ seconds, key, velocity, regions, releaseRegions }) => ({
      seconds,
      key,
      velocity,
      regions: places(regions),
      ...(releaseRegions.length > 0 && { releaseRegions: places(releaseRegions) }),
    })),
    ...(report.controllerRegions.length > 0 && { controllerRegions: places(report.controllerRegions) }),
    notRendered: notRenderedPlaces(told),
    peakDb: peak > 0 ? round(20 * Math.log10(peak)) : null,
    framesOverFullScale: report.framesOverFullScale,
    warnings: renderWarnings(told),
    choices: [
      ...choices.map(({ what, value }) => ({ about: what, choice: String(value) })),
      ...Object.values(playingChoices).map(({ about, choice }) => ({ about, choice })),
    ],
  };
  return jsonText(output);
}

function notRenderedPlaces({ terminal, instrument, program }: RenderTold) {
  return program.notRendered.map(({ opcode, value, count, source, offset }) => {
    const file = instrument.sources[source];
    return {
      opcode,
      ...(value !== undefined && { value }),
      count,
      line: file?.positionAt(offset).line ?? 1,
      ...(source > 0 && file && { file: shownPath(terminal, file.path) }),
    };
  });
}

/** What was played and what is not rendered, for a person to read. */
export function renderText(told: RenderTold, name: string): string {
  const { terminal, instrument, report, sampleRate } = told;
  const seconds = (report.frames / sampleRate).toFixed(3);
  const peak = report.peak > 0 ? `peak ${(20 * Math.log10(report.peak)).toFixed(1)} dB` : 'silent';
  const lines = [`${name}: ${seconds} s, ${sampleRate} Hz, ${peak}`];
  for (const { key, velocity, seconds: at, regions, releaseRegions } of report.notes.slice(0, mostNotes)) {
    lines.push(
      `${at.toFixed(3)} s  ${keyText(key)} at velocity ${velocity}${regions.length === 0 ? ': silent' : ''}`,
    );
    lines.push(
      ...placeLines(
        regions.map((region) => regionPlace(terminal, instrument, region)),
        '',
      ),
    );
    lines.push(
      ...placeLines(
        releaseRegions.map((region) => regionPlace(terminal, instrument, region)),
        ' on release',
      ),
    );
  }
  const more = report.notes.length - mostNotes;
  if (more > 0) lines.push(`and ${counted(more, 'more note')} (--format json lists all)`);
  const lacking = notRenderedPlaces(told);
  if (lacking.length > 0) lines.push('', 'Not rendered');
  for (const { opcode, value, count, line, file } of lacking) {
    const place = `${file === undefined ? '' : `${file} `}line ${line}`;
    const times = count === 1 ? `in ${place}` : `in ${counted(count, 'place')}, first in ${place}`;
    lines.push(`  ${opcode}${value === undefined ? '' : `=${value}`} ${times}`);
  }
  lines.push(
    '',
    'Where the format leaves a choice, --format json lists what was chosen and docs/choices.md says why.',
  );
  return `${lines.map(visibleText).join('\n')}\n`;
}

function placeLines(places: readonly RegionPlace[], when: string): string[] {
  return places.map(({ file, line, sample }) => {
    return `    ${file === undefined ? '' : `${file} `}line ${line}${when}: ${sample ?? 'no sample'}`;
  });
}

/** What a person should know of a render beyond what was asked for, one sentence each. */
export function renderWarnings({ instrument, program, report }: RenderTold): string[] {
  const warnings: string[] = [];
  const { framesOverFullScale: over } = report;
  if (over > 0) {
    const peak = (20 * Math.log10(report.peak)).toFixed(1);
    warnings.push(
      `${counted(over, 'frame is', 'frames are')} above full scale (peak ${peak} dB) and cut off. --float keeps them.`,
    );
  }
  const mean = Math.max(...report.mean.map(Math.abs));
  if (mean > loudestMean) {
    const level = (20 * Math.log10(mean)).toFixed(1);
    warnings.push(
      `The sound is off centre (DC offset): its mean is at ${level} dB of full scale, which can click.`,
    );
  }
  for (const id of report.unreadableSamples) {
    warnings.push(`${program.samples[id]} could not be decoded, so its regions are silent.`);
  }
  for (const region of report.brokenRegions) {
    const sample = instrument.samplePath(instrument.regions[region]) ?? 'no sample';
    warnings.push(`A region with ${sample} was stopped, because its values ran out of range.`);
  }
  if (report.refusedVoices > 0) {
    const { refusedVoices: voices } = report;
    warnings.push(`${counted(voices, 'voice was', 'voices were')} not played: too many at one time.`);
  }
  if (report.wasCutOff) warnings.push('Sounds that did not end by themselves were ended after two minutes.');
  if (report.notes.length > 0 && report.frames === 0) warnings.push('Nothing sounds.');
  return warnings;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
