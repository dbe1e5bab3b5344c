import type { LoopSeam, MeasuredPitch, SampleSurvey } from '../../model/samples';
import type { ListedSample } from './sampleText';

/** A sample as one line of JSON; what was not measured or cannot be is null. */
export function sampleJson({ path, facts, pitch, survey, seams }: ListedSample): string {
  const { problems, ...said } = facts;
  return JSON.stringify({
    path,
    ...said,
    pitch: pitch && roundedPitch(pitch),
    problems: problems.map((problem) => problem.message),
    survey: survey && roundedSurvey(survey),
    loopSeams: seams.map((seam) => seam && roundedSeam(seam)),
  });
}

/** With no more digits than a measurement has. */
function roundedPitch({ hertz, key, cents, confidence }: MeasuredPitch): MeasuredPitch {
  return {
    hertz: Number(hertz.toPrecision(7)),
    key,
    cents: decimals(cents, 2),
    confidence: decimals(confidence, 3),
  };
}

function roundedSurvey(survey: SampleSurvey): object {
  const { peak, dcOffset, endLevelDb, endStep, greatestEndStep, isWhole, trailingSilenceFrames } = survey;
  const { channelCorrelation, hasEqualChannels, loudness, momentaryLoudness } = survey;
  return {
    ...survey,
    peak: decimals(peak, 6),
    dcOffset: dcOffset.map((one) => decimals(one, 6)),
    // JSON has no number for the level of silence.
    endLevelDb: Number.isFinite(endLevelDb) ? decimals(endLevelDb, 2) : null,
    // The end of a file that was looked at in part is not known.
    trailingSilenceFrames: isWhole ? trailingSilenceFrames : null,
    endStep: isWhole ? decimals(endStep, 6) : null,
    greatestEndStep: isWhole ? decimals(greatestEndStep, 6) : null,
    hasEqualChannels: isWhole ? hasEqualChannels : null,
    channelCorrelation: channelCorrelation === null ? null : decimals(channelCorrelation, 4),
    loudness: loudness === null ? null : decimals(loudness, 2),
    momentaryLoudness: momentaryLoudness === null ? null : decimals(momentaryLoudness, 2),
  };
}

function roundedSeam(seam: LoopSeam): object {
  const { step, greatestStep, bend, greatestBend } = seam;
  return {
    ...seam,
    step: decimals(step, 6),
    greatestStep: decimals(greatestStep, 6),
    bend: decimals(bend, 6),
    greatestBend: decimals(greatestBend, 6),
  };
}

function decimals(value: number, count: number): number {
  return Number(value.toFixed(count)) + 0;
}
