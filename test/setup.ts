import fc from 'fast-check';

// The same cases each time, so that a failure is the fault of a change. ZONEWRIGHT_SEED=<number> looks at others.
fc.configureGlobal({ seed: Number(process.env.ZONEWRIGHT_SEED ?? 20261125) });
