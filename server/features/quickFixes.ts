import type { Finding, Fix, TextEdit } from '../model/finding';

/** A fix with the finding that it settles. */
export interface QuickFix {
  finding: Finding;
  fix: Fix;
  /** Whether it is the one to take when nothing is said. */
  isPreferred: boolean;
}

/** What fixes of one kind have in common: the code of what they settle, and what they do. */
export interface FixKind {
  code: string;
  kind: string;
}

/** The fixes of findings that touch a stretch of a source. */
export function quickFixesAt(
  findings: readonly Finding[],
  source: number,
  start: number,
  end: number,
): QuickFix[] {
  return findings
    .filter((finding) => finding.source === source && finding.start <= end && finding.end >= start)
    .flatMap((finding) =>
      (finding.fixes?.() ?? []).map((fix, at) => ({ finding, fix, isPreferred: at === 0 && fix.safe })),
    );
}

/** The kind of a fix of a finding. */
export function fixKindOf({ code }: Finding, { kind, title }: Fix): FixKind {
  return { code, kind: kind ?? title };
}

/** Says of a finding which of its fixes is taken. */
export type FixChoice = (finding: Finding) => Fix | undefined;

/** Takes the fixes that have one sensible outcome. */
export const safeOnes: FixChoice = (finding) => finding.fixes?.().find(({ safe }) => safe);

/** Takes the fixes of a kind. */
export function onesOfKind(wanted: FixKind): FixChoice {
  return (finding) =>
    finding.code === wanted.code
      ? finding.fixes?.().find((fix) => fixKindOf(finding, fix).kind === wanted.kind)
      : undefined;
}

/** The fixes that can be applied together in a source. */
export interface FixesTogether {
  /** In the order of the text. */
  edits: TextEdit[];
  /** What they settle. */
  fixed: { finding: Finding; fix: Fix }[];
  /** How many fixes touch what another one changes, and so have to wait. */
  left: number;
}

/**
 * The chosen fixes in a source together. One that would touch what an earlier one changes is left for the next time; those
 * that change another source or write a file are none of them.
 */
export function fixesTogether(
  findings: readonly Finding[],
  source: number,
  choose: FixChoice,
): FixesTogether {
  const found: FixesTogether = { edits: [], fixed: [], left: 0 };
  for (const finding of findings) {
    if (finding.source !== source || !finding.fixes) continue;
    const fix = choose(finding);
    if (!fix || fix.saves || fix.edits.some((edit) => edit.source !== source)) continue;
    const own = [...fix.edits].sort((a, b) => a.start - b.start);
    if (own.some((edit) => touches(found.edits, edit))) {
      found.left++;
      continue;
    }
    for (const edit of own) found.edits.splice(placeOf(found.edits, edit.start), 0, edit);
    found.fixed.push({ finding, fix });
  }
  return found;
}

/** The edits of {@link fixesTogether} for all safe fixes. */
export function allSafeEdits(findings: readonly Finding[], source: number): TextEdit[] {
  return fixesTogether(findings, source, safeOnes).edits;
}

/** Whether an edit meets one of others, which are in order and meet none of one another. */
function touches(edits: readonly TextEdit[], { start, end }: TextEdit): boolean {
  const at = placeOf(edits, start);
  return (edits[at]?.start ?? Number.POSITIVE_INFINITY) <= end || (edits[at - 1]?.end ?? -1) >= start;
}

/** How many edits, in order, start before an offset. */
function placeOf(edits: readonly TextEdit[], start: number): number {
  let low = 0;
  let high = edits.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (edits[middle].start < start) low = middle + 1;
    else high = middle;
  }
  return low;
}
