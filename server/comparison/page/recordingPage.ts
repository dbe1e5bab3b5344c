import { escapeMarkup } from '../../map/escape';
import { counted } from '../../model/wording/counted';
import { pageFrame } from '../../pages/pageFrame';
import { tableSection } from '../../pages/tableSection';
import type { WordedRecording } from './recordingWords';
import {
  alignmentText,
  noRecordedDifference,
  recordingCells,
  recordingColumns,
  recordingMisfit,
  tolerancesText,
} from './recordingWords';

/** A comparison with a recording as one HTML page. */
export function recordingPage(told: WordedRecording): string {
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
          recordingColumns,
          differing.map((one) => recordingCells(told, one)),
        )
      : paragraph(fits ? noRecordedDifference : recordingMisfit),
    paragraph(tolerancesText(tolerances)),
  ];
  return pageFrame(`${name} and the recording ${recording}`, sections);
}
