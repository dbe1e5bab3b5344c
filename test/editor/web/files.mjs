import wavefile from 'wavefile';

/** Half a second of a sine with a period of 100 frames: 441 Hz at 44,100 frames a second. */
function sine() {
  const wav = new wavefile.WaveFile();
  const frames = Float64Array.from({ length: 22050 }, (_, at) => 0.5 * Math.sin((2 * Math.PI * at) / 100));
  wav.fromScratch(1, 44100, '32f', frames);
  return wav.toBuffer();
}

// The first loop of 80.31 periods jumps where it closes; the last frame of the file is 22049.
const instrument = `<region> sample=Samples/a.wav key=69 loop_mode=loop_continuous loop_start=1000 loop_end=9030
<region> sample=Samples/a.wav key=70 loop_mode=loop_continuous loop_start=1000 loop_end=22050
<region> sample=Samples/gone.wav key=71
`;

/** The files of the folder that the tests open, by path. */
export const files = { '/instruments/a.sfz': instrument, '/instruments/Samples/a.wav': sine() };
