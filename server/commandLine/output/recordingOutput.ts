import { roundedTo } from '../../comparison/page/comparisonWords';
import type { WordedRecording } from '../../comparison/page/recordingWords';
import {
  alignmentText,
  noRecordedDifference,
  recordingCells,
  recordingColumns,
  recordingMisfit,
  saidParameter,
  tolerancesText,
} from '../../comparison/page/recordingWords';
import type { RecordedNote } from '../../comparison/recording/compareRecording';
import type { RecordedDifference } from '../../comparison/recording/judgeNote';
import { counted } from '../../model/wording/counted';

/** Notes that a person is shown one by one. */
const mostShown = 60;

/** The comparison as JSON. */
export function recordingJson(told: WordedRecording): string {
  const { compared, tolerances } = told;
  const { notes, found, regions, fits, shared, doubts } = compared;
  const output = {
    equal: fits && compared.differing.length === 0,
    fits,
    notes,
    found,
    regions,
    startSeconds: roundedTo(compared.startSeconds, 4),
    clockPpm: roundedTo(compared.clockPpm, 1),
    shared: {
      levelDb: roundedTo(shared.levelDb, 2),
      pitchCents: roundedTo(shared.pitchCents, 2),
      sidesDb: roundedTo(shared.sidesDb, 2),
    },
    tolerances,
    doubts,
    differences: compared.differing.map((one) => ({
      key: one.note.key,
      velocity: one.note.velocity,
      seconds: roundedTo(one.note.seconds, 3),
      recordedSeconds: roundedTo(one.seconds, 3),
      regions: one.note.regions.map((region) => told.regionPlace(region)),
      differences: one.differences.map((difference) => ({
        ...difference,
        size: roundedTo(difference.size, 2),
        place: placeOf(told, one, difference),
      })),
    })),
  };
  return `${JSON.stringify(output, undefined, 2)}\n`;
}

/** The comparison for a person to read: a list, or a page of Markdown. */
export function recordingText(told: WordedRecording, isMarkdown: boolean): string {
  const { name, recording, compared } = told;
  const { doubts, differing, fits } = compared;
  const lines = [
    ...(isMarkdown ? [`# ${name} and the recording ${recording}`, ''] : []),
    alignmentText(told),
    ...(doubts.length > 0 ? ['', isMarkdown ? '## Doubts' : 'Doubts', ''] : []),
    ...doubts.map(({ message }) => `- ${message}`),
    '',
  ];
  if (!fits) lines.push(recordingMisfit);
  else if (differing.length === 0) lines.push(noRecordedDifference);
  else {
    lines.push(`${counted(differing.length, 'note')} ${differing.length === 1 ? 'differs' : 'differ'}:`, '');
    if (isMarkdown)
      lines.push(`| ${recordingColumns.join(' | ')} |`, `|${'---|'.repeat(recordingColumns.length)}`);
    for (const one of differing.slice(0, mostShown)) lines.push(lineOf(told, one, isMarkdown));
    if (differing.length > mostShown) lines.push('', `… and ${differing.length - mostShown} more.`);
  }
  lines.push('', tolerancesText(told.tolerances));
  return `${lines.join('\n').trimEnd()}\n`;
}

function lineOf(told: WordedRecording, one: RecordedNote, isMarkdown: boolean): string {
  const cells = recordingCells(told, one);
  if (isMarkdown) return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  const [note, where, region, differences] = cells;
  return `${note} at ${where} (${region}): ${differences}`;
}

/** Where the text says what a difference is about, else the first region of the note. */
function placeOf(told: WordedRecording, one: RecordedNote, difference: RecordedDifference) {
  const said = saidParameter(told.instrument, one, difference);
  if (!said) return told.regionPlace(one.note.regions[0]);
  return { ...told.parameterPlace(said.parameter), opcode: said.opcode };
}
