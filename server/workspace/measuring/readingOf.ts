import { readSampleFacts } from '../../audio/readSampleFacts';
import type { FileReader } from '../../model/files';
import type { SampleReading } from '../../model/samples';

/** What the header of an open file says. Never rejects. */
export async function readingOf(reader: FileReader): Promise<SampleReading> {
  try {
    return await readSampleFacts(reader);
  } catch (error) {
    return {
      kind: 'unreadable',
      reason: `The file cannot be read: ${error instanceof Error ? error.message : 'unknown reason'}.`,
    };
  }
}
