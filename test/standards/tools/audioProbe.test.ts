import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import { readDamaged } from '../../unit/audio/boundedReading';
import { hasTools, SoundFiles } from './soundFiles';

// Files that the general tool ffmpeg wrote, as its companion ffprobe and this project read them. It writes kinds that
// sox and libsndfile do not. Neither shares code with this project.

const folder = temporaryFolder('audio-probe');
const files = new SoundFiles(folder);

function probe(name: string) {
  const asked = 'stream=sample_rate,channels,duration_ts,bits_per_sample,bits_per_raw_sample';
  const printed = files.run('ffprobe', '-v', 'error', '-show_entries', asked, '-of', 'json', name);
  const stream = (JSON.parse(printed) as { streams: Record<string, string | number>[] }).streams[0] ?? {};
  return {
    sampleRate: Number(stream.sample_rate),
    channels: Number(stream.channels),
    frames: Number(stream.duration_ts),
    bits: Number(stream.bits_per_raw_sample ?? stream.bits_per_sample),
  };
}

describe.skipIf(!hasTools('ffmpeg', 'ffprobe', 'sox'))('facts against ffprobe', () => {
  const kinds: [name: string, encoding: string, options: string][] = [
    ['be16.aiff', 'pcm', '-c:a pcm_s16be'],
    ['be24.aiff', 'pcm', '-c:a pcm_s24be'],
    ['be32.aiff', 'pcm', '-c:a pcm_s32be'],
    ['le16.aiff', 'pcm', '-c:a pcm_s16le'],
    ['float.aiff', 'float', '-c:a pcm_f32be'],
    ['double.aiff', 'float', '-c:a pcm_f64be'],
    ['alaw.aiff', 'alaw', '-c:a pcm_alaw'],
    ['mulaw.aiff', 'mulaw', '-c:a pcm_mulaw'],
    ['tagged.aiff', 'pcm', '-c:a pcm_s16be -write_id3v2 1 -metadata title=Tone'],
    ['short.flac', 'flac', '-c:a flac -sample_fmt s16'],
    ['long.flac', 'flac', '-c:a flac -sample_fmt s32'],
    ['vorbis.ogg', 'vorbis', '-c:a libvorbis'],
    ['flac.ogg', 'flac', '-c:a flac -sample_fmt s16'],
    ['long.wav', 'pcm', '-c:a pcm_s24le -rf64 always'],
    ['wide.wav', 'pcm', '-c:a pcm_s64le'],
    ['float.wav', 'float', '-c:a pcm_f32le -rf64 always'],
    ['double.wav', 'float', '-c:a pcm_f64le'],
    ['alaw.wav', 'alaw', '-c:a pcm_alaw'],
    ['mulaw.wav', 'mulaw', '-c:a pcm_mulaw'],
    ['indexed.flac', 'flac', '-c:a flac -sample_fmt s32 -frame_size 333 -metadata TITLE=Tone'],
    ['described.wav', 'pcm', '-c:a pcm_s16le -write_bext 1 -metadata description=Tone'],
  ];

  beforeAll(() => {
    files.synthesise('source.wav', 1.2345, '-r', '44100', '-b', '24', '-c', '2');
    const written = kinds.flatMap(([name, , options]) => [...options.split(' '), name]);
    files.run('ffmpeg', '-v', 'error', '-y', '-i', 'source.wav', ...written);
  });

  it.each(kinds)('%s (%s, %s)', async (name, encoding) => {
    const facts = await files.facts(name);
    const { bits, ...shown } = probe(name);
    expect(facts).toMatchObject({ ...shown, encoding, problems: [] });
    // It gives no depth for FLAC within Ogg.
    if (name !== 'flac.ogg') expect(facts.bitsPerSample).toBe(bits);
    await readDamaged(files.bytes(name));
  });

  it('ima4 in AIFF-C, in whole blocks of 64 frames', async () => {
    files.synthesise('mono.wav', 1.2345, '-r', '44100', '-b', '16', '-c', '1');
    files.run('ffmpeg', '-v', 'error', '-y', '-i', 'mono.wav', '-c:a', 'adpcm_ima_qt', 'blocks.aiff');
    const facts = await files.facts('blocks.aiff');
    expect(facts).toMatchObject({ encoding: 'ima-adpcm', sampleRate: 44100, channels: 1, problems: [] });
    expect(facts.frames).toBe(Math.ceil(files.bySox('mono.wav').frames / 64) * 64);
  });

  it('Opus, whose pre-skip ffprobe counts and this project does not (RFC 7845, section 4.2)', async () => {
    files.synthesise('whole.wav', 1.25, '-r', '48000', '-b', '16', '-c', '2');
    files.run('ffmpeg', '-v', 'error', '-y', '-i', 'whole.wav', '-c:a', 'libopus', 'opus.ogg');
    const { frames, ...shown } = probe('opus.ogg');
    const preSkip = Buffer.from(files.bytes('opus.ogg')).indexOf('OpusHead') + 10;
    const skipped = Buffer.from(files.bytes('opus.ogg')).readUInt16LE(preSkip);
    expect(skipped).toBeGreaterThan(0);
    expect(await files.facts('opus.ogg')).toMatchObject({
      sampleRate: shown.sampleRate,
      channels: shown.channels,
      frames: frames - skipped,
      encoding: 'opus',
      problems: [],
    });
  });
});
