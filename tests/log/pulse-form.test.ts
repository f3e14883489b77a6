import { describe, expect, test } from 'vitest';
import { judgedLog, rulesThat } from '../support/judged-log.ts';
import { simulateDrive } from '../support/simulated-drive.ts';

const forms = [
	[true, 1, 'with the dead time in it, once a cycle'],
	[false, 1, 'without the dead time in it, once a cycle'],
	[true, 2, 'with the dead time in it, twice a cycle'],
	[false, 2, 'without the dead time in it, twice a cycle'],
] as const;

describe('an injector pulse is recognized by the idle', () => {
	for (const [dead, perCycle, words] of forms)
		test(words, () => {
			const drive = simulateDrive({ pulse: { dead, perCycle } });
			const { analysis, verdicts } = judgedLog(drive);
			expect(analysis.pulse).toContain(words);
			expect(rulesThat(verdicts, 'fails')).toEqual([]);
			expect(Math.abs(Number(analysis.run.get('log.air_fuel_ratio_error')!.value))).toBeLessThan(0.05);
			// The injectors are driven as long, but that two openings take the dead time twice: 1 ms of 22 at the end of a pull.
			const [duty] = analysis.pulls.get('log.duty_peak')!;
			expect(Number(duty!.value)).toBeGreaterThan(0.5);
			expect(Number(duty!.value)).toBeLessThan(0.62);
		});

	test('a wrong injector figure is no other form', () => {
		for (const injectorFlow of [0.7, 1.3]) {
			const { analysis, verdicts } = judgedLog(simulateDrive({ faults: { injectorFlow } }));
			expect(analysis.pulse).toContain('with the dead time in it, once a cycle');
			expect(rulesThat(verdicts, 'fails').join()).toMatch(/air-and-fuel-disagree/);
		}
	});
});
