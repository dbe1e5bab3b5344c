import type { SampleReading } from '../../model/samples';

/** The answer for a sample file that cannot be read; `reason` is a sentence for people. */
export function unreadable(reason: string): SampleReading {
  return { kind: 'unreadable', reason };
}
