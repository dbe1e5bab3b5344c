import type { RecordedNote, RecordingComparison } from '../../comparison/recording/compareRecording';
import type { RecordedDifference, RecordingTolerances } from '../../comparison/recording/judgeNote';
import { escapeMarkup } from '../../map/escape';
import type { Instrument } from '../../model/instrument';
import { counted } from '../../model/wording/counted';
import { keyText } from '../../model/wording/rangeWords';
import { pageFrame } from '../../pages/pageFrame';
import { tableSection } from '../../pages/tableSection';
import type { RegionPlace } from '../input/regionPlaces';
import { parameterPlace, regionPlace } from '../input/regionPlaces';
import type { Terminal } from '../terminal';

/** Everything that a comparison with a recording has to tell. */
export interface RecordingTold {
  terminal: Terminal;
  name: string;
  recording: string;
  instrument: Instrument;
  compared: RecordingComparison;
  tolerances: RecordingTolerances;
}

/** Notes that a person is shown one by one. */
const mostShown = 60;

/** The comparison as JSON. */
export function recordingJson(told: RecordingTold): string {
  const { compared, tolerances } = told;
  const { notes, found, regions, fits, shared, doubts } = compared;
  const output = {
    equal: fits && compared.differing.length === 0,
    fits,
    notes,
    found,
    regions,
    startSeconds: round(compared.startSeconds, 4),
    clockPpm: round(compared.clockPpm, 1),
    shared: {
      levelDb: round(shared.levelDb, 2),
      pitchCents: round(shared.pitchCents, 2),
      sidesDb: round(shared.sidesDb, 2),
    },
    tolerances,
    doubts,
    differences: compared.differing.map((one) => ({
      key: one.note.key,
      velocity: one.note.velocity,
      seconds: round(one.note.seconds, 3),
      recordedSeconds: round(one.seconds, 3),
      regions: one.note.regions.map((region) => regionPlace(told.terminal, told.instrument, region)),
      differences: one.differences.map((difference) => ({
        ...difference,
        size: round(difference.size, 2),
        place: placeOf(told, one, difference),
      })),
    })),
  };
  return `${JSON.stringify(output, undefined, 2)}\n`;
}

/** The comparison for a person to read: a list, or a page of Markdown. */
export function recordingText(told: RecordingTold, isMarkdown: boolean): string {
  const { name, recording, compared } = told;
  const { doubts, differing, fits } = compared;
  const lines = [
    ...(isMarkdown ? [`# ${name} and the recording ${recording}`, ''] : []),
    alignmentText(told),
    ...(doubts.length > 0 ? ['', isMarkdown ? '## Doubts' : 'Doubts', ''] : []),
    ...doubts.map(({ message }) => `- ${message}`),
    '',
  ];
  if (!fits) lines.push(misfitText);
  else if (differing.length === 0) lines.push(noneText);
  else {
    lines.push(`${counted(differing.length, 'note')} ${differing.length === 1 ? 'differs' : 'differ'}:`, '');
    if (isMarkdown) lines.push(`| ${columns.join(' | ')} |`, `|${'---|'.repeat(columns.length)}`);
    for (const one of differing.slice(0, mostShown)) lines.push(lineOf(told, one, isMarkdown));
    if (differing.length > mostShown) lines.push('', `… and ${differing.length - mostShown} more.`);
  }
  lines.push('', tolerancesText(told.tolerances));
  return `${lines.join('\n').trimEnd()}\n`;
}

/** The comparison as one HTML page. */
export function recordingHtml(told: RecordingTold): string {
  const { name, recording, compared, tolerances } = told;
  const { doubts, differing, fits } = compared;
  const paragraph = (text: string) => `<p>${escapeMarkup(text)}</p>`;
  const sections = [
    paragraph(alignmentText(told)),
    ...(doubts.length > 0
      ? [
          `<h2>Doubts</h2><ul>${doubts.map(({ message }) => `<li>${escapeMarkup(message)}</li>`).join('')}</ul>`,
        ]
      : []),
    fits && differing.length > 0
      ? tableSection(
          `${counted(differing.length, 'note')} with differences`,
          columns,
          differing.map((one) => cellsOf(told, one)),
        )
      : paragraph(fits ? noneText : misfitText),
    paragraph(tolerancesText(tolerances)),
  ];
  return pageFrame(`${name} and the recording ${recording}`, sections);
}

const columns = ['note', 'in the recording', 'region', 'differences'];
const noneText = 'No note differs by more than the tolerances.';
const misfitText = 'The notes are not compared one by one, because the recording does not fit.';

function alignmentText({ recording, compared }: RecordingTold): string {
  const { notes, found, regions, shared } = compared;
  return `${found} of ${counted(notes, 'note')}, for ${counted(regions, 'region')}, found in ${recording}: it starts ${round(compared.startSeconds, 3)} s in, its clock is ${round(compared.clockPpm, 0)} millionths off, its level ${signed(shared.levelDb, 1)} dB and its pitch ${signed(shared.pitchCents, 1)} cents from the instrument's. Notes are compared with level and pitch of the whole taken away.`;
}

function lineOf(told: RecordingTold, one: RecordedNote, isMarkdown: boolean): string {
  const cells = cellsOf(told, one);
  if (isMarkdown) return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  const [note, where, region, differences] = cells;
  return `${note} at ${where} (${region}): ${differences}`;
}

function cellsOf(told: RecordingTold, one: RecordedNote): string[] {
  const { key, velocity, regions } = one.note;
  const places = regions.map((region) => regionPlace(told.terminal, told.instrument, region));
  const differences = one.differences.map((difference) => {
    const place = placeOf(told, one, difference);
    const line = place && place.line !== places[0]?.line ? ` (line ${place.line})` : '';
    return `${sizeText(difference)}${difference.message}${line}`;
  });
  return [
    `key ${keyText(key)}, velocity ${velocity}`,
    `${round(one.seconds, 2)} s`,
    places.map(placeText).join(', '),
    differences.join(' '),
  ];
}

function placeText({ line, file, sample }: RegionPlace): string {
  return `line ${line}${file === undefined ? '' : ` of ${file}`}${sample === null ? '' : `, ${sample}`}`;
}

function sizeText({ measure, size, unit }: RecordedDifference): string {
  return unit === '' ? '' : `${measure} ${signed(size, unit === 'ms' ? 0 : 1)} ${unit}: `;
}

/** Opcodes in which a difference of a measure is to be looked for, the likeliest first. */
const opcodes: Readonly<Record<RecordedDifference['measure'], readonly string[]>> = {
  pitch: ['tune', 'pitch_keycenter', 'transpose', 'key'],
  level: ['volume', 'amplitude', 'amp_veltrack'],
  sides: ['pan', 'position', 'width'],
  start: ['delay', 'offset'],
  length: ['end', 'loop_mode'],
  loop: ['loop_end', 'loop_start', 'loop_mode', 'end'],
  attack: ['ampeg_attack', 'ampeg_delay'],
  release: ['ampeg_release'],
  brightness: ['cutoff', 'fil_veltrack'],
  missing: [],
};

/** Where the text says what a difference is about: in the first region of the note, what it says itself first; else at the region. */
function placeOf(
  { terminal, instrument }: RecordingTold,
  { note }: RecordedNote,
  { measure, kind }: RecordedDifference,
) {
  const [region] = note.regions;
  const header = instrument.regions[region];
  const names = kind === 'root' ? opcodes.pitch.slice(1) : opcodes[measure];
  const inForce = names.flatMap((opcode) => {
    const parameter = instrument.effective(header, instrument.names.idOf(opcode));
    return parameter < 0 ? [] : [{ opcode, parameter }];
  });
  const isOwn = ({ parameter }: { parameter: number }) => parameter >= instrument.firstParameter(header);
  const said = inForce.find(isOwn) ?? inForce[0];
  if (!said) return regionPlace(terminal, instrument, region);
  return { ...parameterPlace(terminal, instrument, said.parameter), opcode: said.opcode };
}

function tolerancesText(tolerances: RecordingTolerances): string {
  const { levelDb, pitchCents, startMs, timeShare, timeMs, brightnessDb, sidesDb } = tolerances;
  return `Tolerances: level ${levelDb} dB, pitch ${pitchCents} cents, start ${startMs} ms, sides ${sidesDb} dB, third octaves ${brightnessDb} dB in the mean, attack, length and release ${timeMs} ms or ${100 * timeShare} %.`;
}

function signed(value: number, digits: number): string {
  const rounded = round(value, digits);
  return `${rounded < 0 ? '−' : '+'}${Math.abs(rounded)}`;
}

function round(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}
