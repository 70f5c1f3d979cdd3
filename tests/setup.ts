import fc from 'fast-check';

/** The same examples on every run, so that a red build can be repeated. `FC_SEED=$RANDOM npm test` looks elsewhere. */
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20_261_125) });
