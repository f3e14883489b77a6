import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cycleTime, duty, injectorFlow, injectorFlowNeeded, pulseWidth } from '../../src/physics/injector.ts';
import { between, expectRange, expectRefusals, seeded } from './spoilt.ts';

const job = { fuelFlow: 0.035, injectors: 8, rpm: 5500, deadTime: 1e-3 };

describe('an injector', () => {
	test('flows its rating at its rated pressure, twice that at four times the pressure', () => {
		expect(injectorFlow(3e-3, 3e5, 3e5)).toBe(3e-3);
		expect(injectorFlow(3e-3, 3e5, 12e5)).toBeCloseTo(6e-3, 15);
	});

	test('flows the same when rating and rated pressure are both moved along its own curve', () => {
		fc.assert(
			fc.property(
				between(1e-3, 2e-2),
				between(1e5, 6e5),
				between(1e5, 6e5),
				between(1e5, 6e5),
				(flow, a, b, across) => {
					const restated = injectorFlow(flow, a, b);
					expect(injectorFlow(restated, b, across)).toBeCloseTo(injectorFlow(flow, a, across), 12);
				},
			),
			seeded,
		);
	});

	test('is driven for its fuel and its dead time', () => {
		const cycle = 120 / 5500;
		expect(pulseWidth(job, 5e-3)).toBeCloseTo((0.035 * cycle) / 8 / 5e-3 + 1e-3, 12);
		expect(duty(pulseWidth(job, 5e-3), 5500)).toBeCloseTo(0.035 / 8 / 5e-3 + 1e-3 / cycle, 12);
	});

	test('shows a duty over 1 when it is too small, and does not hide it', () => {
		expect(duty(pulseWidth(job, 3e-3), job.rpm)).toBeGreaterThan(1);
	});

	test('at idle is driven for little more than its dead time', () => {
		// 25 kg/h of air at lambda 1 on petrol, 42 lb/h injectors.
		const idle = { fuelFlow: 25 / 3600 / 14.7, injectors: 8, rpm: 750, deadTime: 1e-3 };
		expect(pulseWidth(idle, 5.29e-3) * 1e3).toBeCloseTo(2.79, 2);
	});
});

describe('the flow needed', () => {
	test('brings the duty to its limit exactly, whatever the job', () => {
		fc.assert(
			fc.property(
				between(1e-3, 0.2),
				fc.constantFrom(4, 6, 8, 16),
				between(500, 9000),
				between(0, 2e-3),
				between(0.5, 1),
				(fuelFlow, injectors, rpm, deadTime, limit) => {
					const any = { fuelFlow, injectors, rpm, deadTime };
					expect(duty(pulseWidth(any, injectorFlowNeeded(any, limit)), rpm)).toBeCloseTo(limit, 10);
				},
			),
			seeded,
		);
	});

	test('cannot be decided when the dead time alone takes the limit up', () => {
		expect(() => injectorFlowNeeded({ ...job, deadTime: 0.85 * cycleTime(job.rpm) }, 0.85)).toThrow('dead time');
	});
});

test('what cannot be is refused by name', () => {
	const across = 'pressure across the injector';
	expectRefusals((f, r, p) => injectorFlow(f!, r!, p!), { 'rated flow': 5e-3, 'rated pressure': 3e5, [across]: 3e5 });
	expect(() => injectorFlow(5e-3, 3e5, 0)).toThrow(across);
	const args = { 'fuel flow': 0.03, injectors: 8, rpm: 5500, 'dead time': 1e-3 };
	expectRefusals(
		(fuelFlow, injectors, rpm, deadTime, flow) =>
			pulseWidth({ fuelFlow: fuelFlow!, injectors: injectors!, rpm: rpm!, deadTime: deadTime! }, flow!),
		{ ...args, 'injector flow': 5e-3 },
	);
	expectRefusals(
		(fuelFlow, injectors, rpm, deadTime, limit) =>
			injectorFlowNeeded({ fuelFlow: fuelFlow!, injectors: injectors!, rpm: rpm!, deadTime: deadTime! }, limit!),
		{ ...args, 'duty limit': 0.85 },
	);
	expectRefusals((w, n) => duty(w!, n!), { 'pulse width': 0.01, rpm: 5500 });
});

test('ranges are taken to their ends and no further', () => {
	expectRange(deadTime => pulseWidth({ ...job, deadTime }, 5e-3), 'dead time', 0, 0.02);
	expect(() => injectorFlowNeeded(job, 1)).not.toThrow();
	expect(() => injectorFlowNeeded(job, 1.001)).toThrow('duty limit');
	expect(() => injectorFlowNeeded({ ...job, deadTime: 0 }, 0)).toThrow('duty limit');
});
