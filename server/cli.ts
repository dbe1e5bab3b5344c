import { runCommandLine } from './commandLine/run';
import { processTerminal } from './commandLine/terminal';

void runCommandLine(process.argv.slice(2), processTerminal(__dirname)).then((status) => {
  process.exitCode = status;
});
