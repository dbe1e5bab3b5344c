// Put into a server (`--expose-gc --require`): has it tell on SIGUSR2 what it holds when all else is let go, in megabytes.
process.on('SIGUSR2', () => {
  global.gc();
  global.gc();
  const { heapUsed, external } = process.memoryUsage();
  process.stderr.write(`holds ${Math.round((heapUsed + external) / 1e6)} MB\n`);
});
