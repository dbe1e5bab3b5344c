import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const commandNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * Flags for a browser that runs without a screen, in a container too, and asks nothing from the network itself.
 * Every site keeps its own content security policy: a web view that breaks its policy must fail the tests.
 */
export const chromiumFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

/** The path of a Chromium program, from ZONEWRIGHT_CHROMIUM or the search path; undefined where there is none. */
export function findChromium(environment = process.env) {
  const folders = (environment.PATH ?? '').split(delimiter).filter(Boolean);
  const candidates = environment.ZONEWRIGHT_CHROMIUM
    ? [environment.ZONEWRIGHT_CHROMIUM]
    : [
        ...commandNames.flatMap((name) => folders.map((folder) => join(folder, name))),
        '/usr/bin/chromium',
        '/Applications/Chromium.app/Contents/MacOS/Chromium',
        '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      ];
  return candidates.find(isProgram);
}

function isProgram(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
