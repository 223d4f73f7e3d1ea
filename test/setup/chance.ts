import fc from "fast-check";

/**
 * One run repeats another: properties that name no seed of their own are drawn from this one.
 * UNDERHOOK_SEED=n walks other ground; a seed that finds something becomes an example in the test.
 */
fc.configureGlobal({ seed: Number(process.env.UNDERHOOK_SEED ?? 20261125) });
