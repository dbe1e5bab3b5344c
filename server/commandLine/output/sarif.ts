import { version } from '../../../package.json';
import { rules } from '../../checks/rules';
import type { Severity } from '../../model/finding';
import { jsonText } from '../../model/text/visibleText';
import type { Terminal } from '../terminal';
import { shownPath } from '../terminalPaths';
import type { CheckedFile } from './checkedFile';

const levels: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  information: 'note',
  hint: 'note',
};

/** Findings in the Static Analysis Results Interchange Format (OASIS SARIF 2.1.0), which code hosts and editors read. */
export function sarifOutput(files: readonly CheckedFile[], terminal: Terminal): string {
  const results = files.flatMap(({ path, findings }) =>
    findings.map(({ code, severity, message, start, end }) => ({
      ruleId: code,
      level: levels[severity],
      message: { text: message },
      locations: [
        {
          physicalLocation: {
            artifactLocation: { uri: shownPath(terminal, path).split('/').map(encodeURIComponent).join('/') },
            region: {
              startLine: start.line,
              startColumn: start.column,
              endLine: end.line,
              endColumn: end.column,
            },
          },
        },
      ],
    })),
  );
  const described = rules.map(({ code, finds, severity }) => ({
    id: code,
    shortDescription: { text: finds },
    defaultConfiguration: { level: levels[severity] },
  }));
  const log = {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'zonewright', version, rules: described } },
        columnKind: 'utf16CodeUnits',
        results,
      },
    ],
  };
  return jsonText(log);
}
