import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * The files that only load the code go first. A mutant that spoils a table at load fails a test there; in any other file
 * it would stop before the first test, and be taken for one that no test saw.
 */
class LoadsFirst extends BaseSequencer {
	override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
		const late = ({ moduleId }: TestSpecification) => Number(!moduleId.endsWith('loads.test.ts'));
		return (await super.sort(files)).toSorted((a, b) => late(a) - late(b));
	}
}

/** Only the tests of the two rooms that are mutated, and no build. */
export default defineConfig({
	test: {
		include: ['tests/{physics,units}/**/*.test.ts', 'tests/outside/**/*.test.ts'],
		testTimeout: 60_000,
		sequence: { sequencer: LoadsFirst },
	},
});
