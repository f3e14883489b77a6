/** How often the tests that need many tries do try: fast by default, long with SWAP_AUDIT_LONG=1. */
const long = process.env.SWAP_AUDIT_LONG === '1';

export const counts = {
	/** Processes killed in the middle of a save. */
	kills: long ? 10_000 : 16,
	/** Of the operations of a save, before one of so many it is killed. */
	killEvery: long ? 1 : 2,
	/** Generated expressions checked against the library. */
	expressions: long ? 20_000 : 300,
	/** Spoilt rule files. */
	ruleFiles: long ? 100_000 : 120,
	/** Texts of anything, taken for expressions. */
	expressionTexts: long ? 1_000_000 : 6_000,
	/** Places of one sheet (bytes, lines, keys, numbers) at which it is spoilt in each way; long: all of them. */
	sheetPlaces: long ? Number.POSITIVE_INFINITY : 120,
	/** Sheets with plugs and a log, a part or more of each made something else. */
	mutatedSheets: long ? 10_000 : 30,
	/** Logs spoilt in a few places. */
	spoiltLogs: long ? 2_000 : 12,
	/** Rule packs of folders, links and files that are spoilt. */
	packs: long ? 500 : 4,
	/** Saves by another program while a log is written into the sheet, and as many kills of that log command. */
	appliedLogs: long ? 200 : 1,
	/** Broken files of many MB, read by the command under a bound of memory. */
	bigFiles: long ? Number.POSITIVE_INFINITY : 4,
	/** Sheets with known truth, whose bands are held against it. */
	trials: long ? 2_000 : 100,
	/** Changes of one answer whose effect on the verdicts is followed. */
	edits: long ? 10_000 : 24,
	/** Random sheets from which one answer is taken away, and no gate may open. */
	removals: long ? 3_000 : 20,
	/** Random sheets whose quantities are worked out and held against physics. */
	sheets: long ? 5_000 : 40,
	/** Random boosted builds, under whose lowest limit no rule on boost may fail. */
	ladders: long ? 2_000 : 8,
	/** Lists of random lines, made into evenings. */
	plans: long ? 20_000 : 150,
	/** Random sheets, a third answered, whose open lines are made into evenings. */
	plannedSheets: long ? 500 : 12,
	/** Whether the interview is stopped after each answer of a pass, or after the first, the middle and the last. */
	everyAnswer: long,
	/** Random walks over the interview, 200 steps each. */
	walks: long ? 5_000 : 20,
	/** Quick passes answered by chance, timed as a person would take. */
	passes: long ? 300 : 3,
	/** Orders in which the rule files are read. */
	orders: long ? 20 : 1,
	/** Hostile texts on each surface that prints them. */
	hostile: long ? 100_000 : 300,
	/** Pairs of halves of plugs, and tables of pins. */
	plugs: long ? 10_000 : 100,
	/** Layouts in which one drive is written. */
	layouts: long ? 400 : 10,
	/** Simulated drives of sound cars, none of which may raise anything. */
	soundDrives: long ? 600 : 6,
	/** Cars drawn from what their sheets say, whose logs the model is fitted to. */
	fits: long ? 500 : 60,
	/** Tries to talk the program into a step of boost, in each of twelve ways. */
	boostSteps: long ? 850 : 1,
	/** More logs of one car by other noise, each of which leads to a step of boost. */
	boostDrives: long ? 10 : 0,
	/** Cars with a sensor that is off, for each of four channels. */
	wrongSensors: long ? 60 : 10,
	/** Cars of which the truth is known, whose fitted bands are held against it. */
	knownCars: long ? 400 : 20,
	/** Runs of each command with random options. */
	commandRuns: long ? 1_000 : 1,
	/** Saves by each of two programs on one sheet. */
	increments: long ? 3_000 : 150,
};

/** Where every random choice of the tests starts; SWAP_AUDIT_SEED repeats a run. */
export const seed = Number(process.env.SWAP_AUDIT_SEED ?? 20_260_501);
console.info(`seed ${seed}`);
