// Activates a bundle of the extension in a process of its own, with a stand-in for the editor that takes whatever is registered.
// node standInEditor.cjs BUNDLE prints, as JSON, the milliseconds that loading and activating it took, the commands that it
// registered and the scripts that were loaded until then.
const Module = require('node:module');

const commands = [];

/** Something that can be called, made, extended and asked for anything. */
function anything() {
  return new Proxy(class {}, {
    get: (target, name) => {
      // Nothing that can be waited for.
      if (name === 'then') return undefined;
      if (name === Symbol.iterator) return function* none() {};
      if (name === Symbol.toPrimitive) return () => '';
      return name === 'prototype' ? target.prototype : anything();
    },
    apply: () => anything(),
    construct: () => anything(),
  });
}

function withKnown(known) {
  return new Proxy(known, { get: (target, name) => (name in target ? target[name] : anything()) });
}

const editor = withKnown({
  commands: withKnown({
    registerCommand: (name) => {
      commands.push(name);
      return { dispose() {} };
    },
    registerTextEditorCommand: (name) => {
      commands.push(name);
      return { dispose() {} };
    },
    executeCommand: async () => undefined,
  }),
  workspace: withKnown({
    textDocuments: [],
    workspaceFolders: undefined,
    isTrusted: true,
    findFiles: async () => [],
  }),
  window: withKnown({
    activeTextEditor: undefined,
    visibleTextEditors: [],
    tabGroups: withKnown({ all: [] }),
  }),
});

const load = Module._load;
Module._load = (request, ...more) => (request === 'vscode' ? editor : load(request, ...more));

const context = withKnown({
  subscriptions: [],
  globalStorageUri: withKnown({ fsPath: '/nowhere' }),
  extensionUri: withKnown({ fsPath: '/nowhere' }),
});
const started = performance.now();
require(process.argv[2]).activate(context);
const milliseconds = performance.now() - started;
const scripts = Object.keys(require.cache).filter((path) => path !== __filename);
process.stdout.write(JSON.stringify({ milliseconds, commands, scripts }), () => process.exit());
