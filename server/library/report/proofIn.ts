import { byCount, counted } from '../../model/wording/counted';
import { keyText } from '../../model/wording/rangeWords';
import type { InstrumentProof, InstrumentRecord } from '../build/instrumentRecord';
import type { RowProof } from './libraryRow';

/** The proof that a record holds: of the text that differs most, where several were proved. */
export function proofIn({ proofs = [], figures }: InstrumentRecord): RowProof | undefined {
  const [first, ...others] = proofs;
  if (!first) return undefined;
  const worst = others.reduce((one, other) => (isWorse(other, one) ? other : one), first);
  const parts = [];
  if (worst.worst) {
    const { key, velocity, cause } = worst.worst;
    const target = others.length > 0 ? `${worst.target}, ` : '';
    parts.push(`${target}key ${keyText(key)}, velocity ${velocity}: ${cause}`);
  }
  if (figures && figures.missing > 0)
    parts.push(
      `${counted(figures.missing, 'sample is', 'samples are')} missing and ${byCount(figures.missing, 'was', 'were')} not heard.`,
    );

  return { verdict: worst.verdict, worstDb: worst.worstDb, where: parts.join(' ') };
}

const verdicts = ['alike', 'noted', 'differs'] as const;

function isWorse(one: InstrumentProof, other: InstrumentProof): boolean {
  const [a, b] = [verdicts.indexOf(one.verdict), verdicts.indexOf(other.verdict)];
  return a > b || (a === b && (one.worstDb ?? -Infinity) > (other.worstDb ?? -Infinity));
}
