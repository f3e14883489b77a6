/** How often the tests that need many tries do try: fast by default, long with SWAP_AUDIT_LONG=1. */
const long = process.env.SWAP_AUDIT_LONG === '1';

export const counts = {
	/** Processes killed in the middle of a save. */
	kills: long ? 10_000 : 300,
	/** Saves by each of two programs on one sheet. */
	increments: long ? 3_000 : 150,
};

/** Where every random choice of the tests starts; SWAP_AUDIT_SEED repeats a run. */
export const seed = Number(process.env.SWAP_AUDIT_SEED ?? 20_260_501);
console.info(`seed ${seed}`);
