import { existsSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { looksLikeInstrument } from '../../../client/looksLikeInstrument';
import { rules } from '../../../server/checks/rules';

const root = resolve(import.meta.dirname, '../../..');
const text = readFileSync(join(root, 'package.json'), 'utf8');
const words = JSON.parse(readFileSync(join(root, 'package.nls.json'), 'utf8')) as Record<string, string>;

interface Step {
  description: string;
  media: { image: { light: string; dark: string; hc: string } };
}

interface Setting {
  default?: unknown;
  description?: string;
  properties?: Record<string, Setting>;
}

interface Limited {
  supported: string;
  description: string;
  restrictedConfigurations?: string[];
}

const { contributes, capabilities, browser } = JSON.parse(text) as {
  browser: string;
  capabilities: { untrustedWorkspaces: Limited; virtualWorkspaces: Limited };
  contributes: {
    commands: { command: string; title: string }[];
    configuration: { properties: Record<string, Setting> };
    walkthroughs: { steps: Step[] }[];
  };
};

const keys = [...text.matchAll(/"%([^%"]+)%"/g)].map((match) => match[1]);

describe('the words of the extension', () => {
  it('stand apart from it, each of them used', () => {
    expect(keys.filter((key) => !Object.hasOwn(words, key))).toEqual([]);
    expect(Object.keys(words).filter((key) => !keys.includes(key))).toEqual([]);
  });

  it('name every command', () => {
    for (const { title } of contributes.commands) expect(title).toMatch(/^%.+%$/);
  });
});

describe('plain XML', () => {
  it('is asked about only where it speaks of what instruments are made of', () => {
    const plain = '<project><modelVersion>4</modelVersion><dependency>junit</dependency></project>';
    expect(looksLikeInstrument(plain)).toBe(false);
    expect(
      looksLikeInstrument('<svg xmlns="http://www.w3.org/2000/svg"><path d="M3 16h18v5H3z"/></svg>'),
    ).toBe(false);
    expect(looksLikeInstrument('<rack><bell file="a.WAV" from="C3"/></rack>')).toBe(true);
    expect(looksLikeInstrument('<rack><bell from="C3" lowVelocity="1"/></rack>')).toBe(true);
  });
});

describe('workspaces that are not trusted, or not on a disk', () => {
  const { untrustedWorkspaces: untrusted, virtualWorkspaces: virtual } = capabilities;

  it('are served in part, and the words say which', () => {
    for (const { supported, description } of [untrusted, virtual]) {
      expect(supported).toBe('limited');
      expect(words[description.replaceAll('%', '')]).toMatch(/\. .*\.$/);
    }
  });

  it('set no folder or file that is read before they are trusted', () => {
    const settings = Object.keys(contributes.configuration.properties);
    const leading = settings.filter((name) => /folder|file|path|program/i.test(name));
    expect(leading).not.toEqual([]);
    expect(untrusted.restrictedConfigurations).toEqual(expect.arrayContaining(leading));
  });

  it('have a client of their own where a browser hosts the editor; that of the disk serves no other place', () => {
    expect(browser).toMatch(/^\.\/dist\/browser\//);
    const client = readFileSync(join(root, 'client/processServer.ts'), 'utf8');
    const schemes = [...client.matchAll(/scheme: '([^']+)'/g)].map(([, scheme]) => scheme);
    expect(new Set(schemes)).toEqual(new Set(['file', 'untitled']));
  });
});

describe('settings', () => {
  const severities = contributes.configuration.properties['zonewright.severity']?.properties ?? {};

  it('give every finding a severity to set, by default that of its rule', () => {
    const found = Object.entries(severities).map(([code, setting]) => `${code} ${setting.default}`);
    expect(found.sort()).toEqual(rules.map(({ code, severity }) => `${code} ${severity}`).sort());
  });

  it('and the README say of every finding what it finds, in the words of its rule', () => {
    const readme = readFileSync(join(root, 'README.md'), 'utf8');
    for (const { code, severity, finds } of rules) {
      expect(words[severities[code]?.description?.replaceAll('%', '') ?? '']).toBe(finds);
      expect(readme).toContain(`| \`${code}\` | ${severity} | ${finds} |`);
    }
  });
});

describe('the walkthrough', () => {
  const steps = contributes.walkthroughs.flatMap((one) => one.steps);

  it('shows a picture of its own at each step and in each kind of theme, and small ones', () => {
    const pictures = steps.flatMap(({ media: { image } }) => [image.light, image.dark, image.hc]);
    expect(new Set(pictures).size).toBe(3 * steps.length);
    for (const picture of pictures) {
      expect(existsSync(join(root, picture)), picture).toBe(true);
      expect(statSync(join(root, picture)).size, picture).toBeLessThan(120_000); // our choice
    }
  });

  it('leads to commands that are there', () => {
    const own = contributes.commands.map(({ command }) => command);
    const links = steps.flatMap(({ description }) => [
      ...(words[description.slice(1, -1)] ?? '').matchAll(/\(command:([\w.]+)/g),
    ]);
    expect(links.length).toBeGreaterThan(0);
    for (const [, command = ''] of links) {
      if (command.startsWith('zonewright.')) expect(own).toContain(command);
      else expect(command).toMatch(/^workbench\./);
    }
  });
});
