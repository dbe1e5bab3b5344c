import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ProjectSettingsStore, parseProjectSettings } from '../../../server/workspace/projectSettings';
import { MemoryFiles } from '../workspace/memoryFiles';

describe('a project file', () => {
  it('sets severities and the note name of key 60', () => {
    expect(
      parseProjectSettings('\ufeff{"severity": {"key-gap": "off"}, "middleC": "C3", "other": 1}'),
    ).toEqual({
      settings: { severity: { 'key-gap': 'off' }, middleC: 'C3' },
      problems: [],
    });
  });

  it('tells what makes no sense in it and keeps the rest', () => {
    const { settings, problems } = parseProjectSettings(
      '{"severity": {"key-gap": "loud", "kye-gap": "off", "velocity-gap": "error"}, "middleC": "C9"}',
    );
    expect(settings).toEqual({ severity: { 'velocity-gap': 'error' } });
    expect(problems).toHaveLength(3);
    for (const text of ['', '{', '[]', 'null', '3', '{"severity": 3}']) {
      expect(parseProjectSettings(text), text).toMatchObject({ settings: { severity: {} } });
      expect(parseProjectSettings(text).problems, text).toHaveLength(1);
    }
  });

  it('never makes the reader fail', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        expect(parseProjectSettings(text).settings.severity).toBeTypeOf('object');
      }),
    );
  });
});

describe('the settings of project files', () => {
  it('are those of the nearest file, in the folder or one around it', async () => {
    const files = new MemoryFiles({
      '/a/zonewright.json': '{"middleC": "C3"}',
      '/a/b/c/zonewright.json': '{"middleC": "C5"}',
    });
    const store = new ProjectSettingsStore(files, () => {});
    expect((await store.settingsFor('/a/b/c/d')).middleC).toBe('C5');
    expect((await store.settingsFor('/a/b')).middleC).toBe('C3');
    expect(await store.settingsFor('/x')).toEqual({ severity: {} });
    expect(await store.settingsFor('')).toEqual({ severity: {} });
  });

  it('are read once, and again when told of a change', async () => {
    const files = new MemoryFiles({ '/a/zonewright.json': '{' });
    const warnings: string[] = [];
    const store = new ProjectSettingsStore(files, (message) => warnings.push(message));
    await store.settingsFor('/a');
    await store.settingsFor('/a/b');
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toContain('/a/zonewright.json');
    files.put('/a/zonewright.json', '{"middleC": "C4"}');
    expect((await store.settingsFor('/a')).middleC).toBeUndefined();
    store.forget('/a/zonewright.json');
    expect((await store.settingsFor('/a')).middleC).toBe('C4');
    files.remove('/a');
    store.forget('/a');
    expect((await store.settingsFor('/a')).middleC).toBeUndefined();
  });
});
