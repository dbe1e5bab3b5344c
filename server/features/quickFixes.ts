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

/** The fixes that can be applied together in a source. */
export interface SafeFixes {
  /** In the order of the text. */
  edits: TextEdit[];
  /** How many findings they settle. */
  count: number;
  /** Safe fixes that touch what another one changes, and so have to wait. */
  left: number;
}

/**
 * All safe fixes in a source together. A fix that would touch what an earlier one changes, or another source, is left
 * for the next time.
 */
export function safeFixes(findings: readonly Finding[], source: number): SafeFixes {
  const found: SafeFixes = { edits: [], count: 0, left: 0 };
  for (const finding of findings) {
    if (finding.source !== source || !finding.fixes) continue;
    const safe = finding
      .fixes()
      .find((fix) => fix.safe && !fix.saves && fix.edits.every((edit) => edit.source === source));
    if (!safe) continue;
    const last = found.edits[found.edits.length - 1];
    const own = [...safe.edits].sort((a, b) => a.start - b.start);
    if (last && own.some((edit) => edit.start <= last.end)) {
      found.left++;
      continue;
    }
    found.edits.push(...own);
    found.count++;
  }
  return found;
}

/** The edits of {@link safeFixes}. */
export function allSafeEdits(findings: readonly Finding[], source: number): TextEdit[] {
  return safeFixes(findings, source).edits;
}
