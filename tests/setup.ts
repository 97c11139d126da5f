import fc from 'fast-check';

// Properties are tried on the same examples every time, so that a red run means a change; other examples with
// FAST_CHECK_SEED=... in the environment.
fc.configureGlobal({ seed: Number(process.env.FAST_CHECK_SEED ?? 20_250_101) });
