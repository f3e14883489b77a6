import { describe, expect, it } from 'vitest';
import { partnerOf } from '../../src/units/names.ts';
import { shownUnit } from '../../src/units/shown.ts';
import { kinds } from '../../src/units/table.ts';

describe('the shown unit', () => {
	it.each(kinds)('of %s is of that kind in both sets, and one is the other said again', kind => {
		const [us, metric] = [shownUnit(kind, 'us'), shownUnit(kind, 'metric')];
		expect([us.kind, metric.kind]).toEqual([kind, kind]);
		expect(partnerOf(us) ?? us).toBe(metric);
	});

	it('is the one of the trade', () => {
		expect(shownUnit('pressure', 'us').symbol).toBe('psi');
		expect(shownUnit('pressure', 'metric').symbol).toBe('bar');
		expect(shownUnit('torque', 'us').symbol).toBe('lb-ft');
		expect(shownUnit('rotation', 'metric').symbol).toBe('rpm');
	});
});
