import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { foundFiles } from '../../src/build/plugins.mjs';

const require = createRequire(import.meta.url);
const namespace = '__stryker__';

// The tests of the model for the mutation tool, all in one process: starting the test runner and compiling the rulebook for
// each of some thousand mutants takes a hundred times longer than the tests themselves.

/** The rulebook is taken as built, and the few words of the test runner that these tests use from `vitest-words.mjs`. */
const asBuilt = {
	name: 'as-built',
	setup({ onResolve, onLoad }) {
		onResolve({ filter: /^vitest$/ }, () => ({ path: join(import.meta.dirname, 'vitest-words.mjs') }));
		onLoad({ filter: /compile[\\/]compile\.ts$/ }, ({ path }) => ({
			contents: `
				import { readRulebookWithExamples } from '../../cli/assets/assets.ts';
				export const compileRulebook = () => ({ rulebook: readRulebookWithExamples(), problems: [] });`,
			loader: 'js',
			resolveDir: dirname(path),
		}));
	},
};

/** Test files of the model in the copy that is spoilt; the tables first, they take the least time. */
function testFiles() {
	const tables = ['worked', 'usual', 'limits', 'knock'].map(name => `tests/quantities/model/${name}.test.ts`);
	const others = readdirSync('tests/quantities/model').filter(
		name => /\.test\.ts$/.test(name) && name !== 'each.test.ts',
	);
	const above = ['design', 'practice', 'reached', 'three-sheets'].map(name => `tests/quantities/${name}.test.ts`);
	return new Set([...tables, ...others.sort().map(name => `tests/quantities/model/${name}`), ...above]);
}

class InProcess {
	tests = [];
	/** Loaded while a mutant was active: to be loaded anew for the next. */
	spoilt = true;

	capabilities() {
		return { reloadEnvironment: true };
	}

	async init() {
		this.bundle = join(process.cwd(), 'model-tests.cjs');
		const tests = [...testFiles()].map(file => `require('./${file}');`).join('\n');
		await build({
			stdin: {
				contents: `${tests}\nrequire('./tests/support/model.ts').testModel(); module.exports = require('vitest').tests;`,
				resolveDir: process.cwd(),
			},
			define: {
				'import.meta.url': JSON.stringify(pathToFileURL(join(process.cwd(), 'tests/support/model.ts')).href),
				'import.meta.dirname': JSON.stringify(join(process.cwd(), 'dist')),
			},
			plugins: [foundFiles, asBuilt],
			bundle: true,
			platform: 'node',
			format: 'cjs',
			outfile: this.bundle,
			logLevel: 'error',
		});
	}

	load() {
		delete require.cache[this.bundle];
		this.tests = require(this.bundle);
	}

	async dryRun() {
		this.state().mutantCoverage = { static: {}, perTest: {} };
		this.load();
		this.spoilt = false;
		const tests = this.run(this.tests, true);
		return { status: 'complete', tests, mutantCoverage: this.state().mutantCoverage };
	}

	async mutantRun({ activeMutant, testFilter, hitLimit, mutantActivation, disableBail }) {
		const state = this.state();
		const atLoad = mutantActivation === 'static';
		Object.assign(state, { hitLimit, hitCount: 0, activeMutant: atLoad ? activeMutant.id : undefined });
		try {
			if (atLoad || this.spoilt) this.load();
		} catch (error) {
			this.spoilt = true;
			return { status: 'killed', killedBy: [], failureMessage: `at load: ${error}`, nrOfTests: 0 };
		}
		this.spoilt = atLoad;
		state.activeMutant = activeMutant.id;
		const wanted = testFilter && new Set(testFilter);
		const results = this.run(wanted ? this.tests.filter(({ name }) => wanted.has(name)) : this.tests, disableBail);
		if (state.hitLimit !== undefined && state.hitCount > state.hitLimit) return { status: 'timeout' };
		const failed = results.filter(({ status }) => status === 2);
		if (failed.length === 0) return { status: 'survived', nrOfTests: results.length };
		const killedBy = failed.map(({ id }) => id);
		return { status: 'killed', killedBy, failureMessage: failed[0].failureMessage, nrOfTests: results.length };
	}

	/** What each test came to; up to the first that fails, unless all are asked for. */
	run(tests, all) {
		const results = [];
		for (const { name, body } of tests) {
			this.state().currentTestId = name;
			const start = performance.now();
			let failureMessage;
			try {
				body();
			} catch (error) {
				failureMessage = String(error?.message ?? error);
			}
			const failed = failureMessage !== undefined;
			results.push({ id: name, name, timeSpentMs: performance.now() - start, status: failed ? 2 : 0, failureMessage });
			if (failed && !all) break;
		}
		this.state().currentTestId = undefined;
		return results;
	}

	state() {
		return (globalThis[namespace] ??= {});
	}
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'in-process', injectableClass: InProcess }];
