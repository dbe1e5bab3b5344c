import type { Finding, Fix, TextEdit } from '../model/finding';

/** A fix with the finding that it settles. */
export interface QuickFix {
  finding: Finding;
  fix: Fix;
  /** Whether it is the one to take when nothing is said. */
  isPreferred: boolean;
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

/**
 * The edits in a source of all safe fixes together, in the order of the text. A fix that would touch what an earlier
 * one changes, or another source, is left for the next time.
 */
export function allSafeEdits(findings: readonly Finding[], source: number): TextEdit[] {
  const edits: TextEdit[] = [];
  for (const finding of findings) {
    if (finding.source !== source || !finding.fixes) continue;
    const safe = finding.fixes().find((fix) => fix.safe && fix.edits.every((edit) => edit.source === source));
    if (!safe) continue;
    const last = edits[edits.length - 1];
    const own = [...safe.edits].sort((a, b) => a.start - b.start);
    if (last && own.some((edit) => edit.start <= last.end)) continue;
    edits.push(...own);
  }
  return edits;
}
