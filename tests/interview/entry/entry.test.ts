import { describe, expect, test } from 'vitest';
import { rowMarks } from '../../../src/interview/entry/choice.ts';
import { readEntry } from '../../../src/interview/entry/entry.ts';
import type { UnitSet } from '../../../src/sheet/question.ts';
import { testModel } from '../../support/model.ts';

const { questions } = testModel().rulebook;

/** The line as read for a question of the rulebook. */
function entry(id: string, text: string, units: UnitSet = 'us', cylinders = 8) {
	return readEntry(questions.find(question => question.id === id)!, text, units, cylinders);
}
const value = (id: string, text: string) => {
	const read = entry(id, text);
	return read.is === 'answer' || read.is === 'odd' ? read.answer.value : read;
};

describe('a number', () => {
	test('is taken with its unit and how it is known, and echoed in both unit sets', () => {
		expect(entry('engine.bore', '3.78 in measured')).toEqual({
			is: 'answer',
			answer: { value: 3.78, unit: 'in', known: 'measured' },
			echo: '3.78 in, 96.01 mm, measured',
		});
	});

	test('without a unit is in the shown one', () => {
		expect(entry('engine.bore', '96', 'metric')).toMatchObject({ answer: { value: 96, unit: 'mm' } });
	});

	test.each(['measured', 'meas', 'paperwork', 'paper', 'estimate', 'est'])(
		'"%s" behind it says how it is known',
		word => {
			const read = entry('boost.target', `10 psi ${word}`);
			expect(read.is === 'answer' && read.answer.known?.startsWith(word)).toBe(true);
		},
	);

	test('outside what is plausible is odd, outside what can be is refused', () => {
		expect(entry('engine.bore', '4.7 in').is).toBe('odd');
		expect(entry('engine.bore', '59 in').is).toBe('problem');
	});
});

describe('a comma that reads two ways is offered as a choice', () => {
	test('of the two readings, each as it would be typed', () => {
		const read = entry('engine.peak_rpm', '5,500 paperwork');
		expect(read).toMatchObject({
			is: 'two-ways',
			ways: [{ text: '5500 paperwork' }, { text: '5.500 paperwork' }],
		});
	});

	test('one that cannot be says so, and picking it is refused with words', () => {
		const read = entry('engine.bore', '3,780 in');
		if (read.is !== 'two-ways') throw new Error(read.is);
		expect(read.ways.map(({ echo }) => echo)).toEqual(['3780 in, which does not fit', '3.78 in, 96.01 mm']);
		expect(entry('engine.bore', read.ways[0].text).is).toBe('problem');
		expect(entry('engine.bore', read.ways[1].text).is).toBe('answer');
	});

	test('in a list every comma means the same', () => {
		const read = entry('sensors.meter_curve', '0,600 15; 1,500 90; 5 1,100');
		expect(read).toMatchObject({ is: 'two-ways' });
		if (read.is === 'two-ways') expect(read.ways[1].text).toBe('0.600 15; 1.500 90; 5 1.100');
	});
});

describe('lists', () => {
	test('a curve is read from a line, and from two pasted columns', () => {
		const points = [
			[0.6, 15],
			[1.5, 90],
			[5, 1100],
		];
		expect(value('sensors.meter_curve', '0.6 15, 1.5 90, 5 1100')).toEqual(points);
		expect(value('sensors.meter_curve', '0.6\t15\n1.5\t90\n5\t1100\n')).toEqual(points);
	});

	test('a reading a cylinder, with a dash where there is none; a column as well as a line', () => {
		const readings = [152, 150, null, 151, 148, 150, 153, 150];
		expect(value('engine.compression', '152 150 - 151 148 150 153 150 psi')).toEqual(readings);
		expect(value('engine.compression', '152\n150\n-\n151\n148\n150\n153\n150')).toEqual(readings);
		expect(entry('engine.compression', '152 150').is).toBe('problem');
	});

	test('loads are read from a line and from two columns', () => {
		const loads = [
			['fans', 28],
			['fuel pump', 9],
		];
		expect(value('charging.loads', 'fans 28, fuel pump 9')).toEqual(loads);
		expect(value('charging.loads', 'fans\t28\nfuel pump\t9')).toEqual(loads);
		expect(value('charging.loads', 'none')).toEqual([]);
		expect(entry('charging.loads', 'fans').is).toBe('problem');
	});

	test('a firing order with dashes, spaces, commas or nothing between', () => {
		for (const typed of ['1-8-4-3-6-5-7-2', '1 8 4 3 6 5 7 2', '1,8,4,3,6,5,7,2', '18436572'])
			expect(value('engine.firing_order', typed)).toEqual([1, 8, 4, 3, 6, 5, 7, 2]);
		expect(entry('engine.firing_order', '1-8-4').is).toBe('problem');
		expect(entry('engine.firing_order', 'one').is).toBe('problem');
	});

	test('pairs of towers', () => {
		expect(value('ignition.towers', '1 6, 3+5; 4-7\n2/8')).toEqual([
			[1, 6],
			[3, 5],
			[4, 7],
			[2, 8],
		]);
		expect(entry('ignition.towers', '1 6 3').is).toBe('problem');
	});

	test('codes in any case, each once', () => {
		expect(value('harness.codes', 'p0340, P0171 p0340')).toEqual(['P0340', 'P0171']);
		expect(value('harness.codes', 'none')).toEqual([]);
	});

	test('circuits by semicolons and bars, and as pasted columns', () => {
		const row = { circuit: 'pump trigger', from: 'C1 pin 4', to: 'relay 86', state: 'to-do', load: 1, length: 6 };
		const lamp = { circuit: 'check lamp', from: '', to: '', state: 'done' };
		expect(value('harness.circuits', 'pump trigger; C1 pin 4; relay 86; to do; 1; 6 | check lamp;;;done')).toEqual([
			row,
			lamp,
		]);
		expect(value('harness.circuits', 'pump trigger\tC1 pin 4\trelay 86\ttodo\t1\t6\ncheck lamp\t\t\tdone')).toEqual([
			row,
			lamp,
		]);
		expect(entry('harness.circuits', 'check lamp; here; there; maybe').is).toBe('problem');
	});
});

describe('choices', () => {
	test('by number, by name, by words, by the start of one', () => {
		for (const typed of ['2', 'turbocharger', 'Turbo']) expect(value('boost.kind', typed)).toBe('turbocharger');
		expect(entry('boost.kind', '9').is).toBe('problem');
		expect(entry('boost.kind', 'steam').is).toBe('problem');
	});

	test('a figure or a number word that one choice alone has means that choice, never a row', () => {
		for (const typed of ['3', 'three', 'three wires']) expect(value('sensors.cam_engine', typed)).toBe('three-wire');
		expect(value('sensors.cam_engine', '2')).toBe('two-wire');
		expect(value('sensors.cam_engine', 'c')).toBe('none');
		expect(entry('sensors.cam_engine', '1').is).toBe('problem');
		expect(value('ignition.boot_angle', '90')).toBe('90');
		expect(value('ignition.boot_angle', '45')).toBe('45');
		expect(entry('ignition.boot_angle', '2').is).toBe('problem');
		expect(entry('fuel.rail', '1')).toMatchObject({ problem: expect.stringContaining('type the letter') });
	});

	test('a figure in words that do not tell choices apart is a row', () => {
		expect(value('ignition.kind', '1')).toBe('distributor');
		expect(value('sensors.throttle_harness', '2')).toBe('flying-lead');
	});

	test('none stands alone, however it is typed', () => {
		const ids = rowMarks(questions.find(({ id }) => id === 'harness.grounds')!);
		for (const typed of ['none', 'None of these', ids.at(-1)!]) expect(value('harness.grounds', typed)).toEqual([]);
		for (const typed of ['none, heads', 'heads, none', `heads, ${ids.at(-1)}`])
			expect(entry('harness.grounds', typed).is).toBe('problem');
	});

	test('several with commas; none is the choice that says so, else an empty list', () => {
		expect(value('engine.history', 'overheated, stood-a-year, overheated')).toEqual(['overheated', 'stood-a-year']);
		expect(value('engine.history', 'none')).toEqual(['none-known']);
		expect(value('harness.grounds', 'none')).toEqual([]);
		expect(entry('engine.history', 'overheated, haunted').is).toBe('problem');
	});

	test('where one choice was the answer once, one alone is written as it was', () => {
		expect(value('harness.pump_cutoff', 'crash-switch')).toBe('crash-switch');
		expect(value('harness.pump_cutoff', 'none')).toBe('none');
		expect(value('harness.pump_cutoff', 'crash-switch, controller-only')).toEqual(['crash-switch', 'controller-only']);
		expect(value('engine.history', 'overheated')).toEqual(['overheated']);
	});
});

test('nothing typed is no answer', () => {
	expect(entry('engine.bore', '  ')).toEqual({ is: 'problem', problem: 'Nothing was typed.' });
});

describe('what cannot be taken as it stands, but may be meant so, is offered', () => {
	const offer = (id: string, text: string, units: UnitSet = 'us') => {
		const read = entry(id, text, units);
		return read.is === 'offer' ? read.way.text : read.is;
	};

	test('a number of the other unit set, a flow without its time, a year by two figures', () => {
		expect(offer('engine.displacement_stated', '5.4')).toBe('5.4 L');
		expect(offer('engine.displacement_stated', '340', 'metric')).toBe('340 cu in');
		expect(offer('engine.bore', '96')).toBe('96 mm');
		expect(offer('injectors.rated_flow', '36 lb')).toBe('36 lb/h');
		expect(offer('injectors.rated_flow', '380cc')).toBe('380cc/min');
		expect(offer('engine.year', '02')).toBe('2002');
		expect(offer('engine.year', "'99")).toBe('1999');
	});

	test('never one that is odd too', () => {
		expect(offer('engine.bore', '9600')).toBe('problem');
		expect(offer('engine.year', '55')).toBe('problem');
		expect(offer('injectors.rated_flow', '36 furlongs')).toBe('problem');
	});

	test('a word that one choice alone has is that choice', () => {
		expect(value('fuel.kind', 'e10')).toBe('petrol-e10');
	});
});

describe('a list that cannot be taken is refused in the words of whoever types it', () => {
	test.each([
		['engine.compression', '150 150', '2 readings, 8 wanted; - for a cylinder you could not measure.'],
		['engine.compression', '- - - - - - - -', 'None of them is measured'],
		['engine.firing_order', '1-8-4-3-6-5-7-9', 'Cylinder 9 is none of 1 to 8.'],
		['engine.firing_order', '1-8-4-3-6-5-7-1', 'Cylinder 1 stands there twice.'],
		['ignition.towers', '1 6, 1 5', 'Cylinder 1 stands there twice'],
		['sensors.meter_curve', '2 170, 1 35', '1 V comes after 2 V; V must rise.'],
		['sensors.meter_curve', '2 170', 'One point is no curve'],
		['harness.codes', 'P0340 P99', '"P99" is no trouble code'],
		['harness.circuits', 'check lamp; here; there; maybe', '"maybe" stands there'],
		['harness.circuits', 'check lamp; here; there; done; twelve', 'the fifth is amps'],
		['harness.circuits', 'check lamp; here; there; done; 1; far', 'the sixth is the length in feet'],
		['engine.year', 'old', '"old" is not a whole number'],
	])('%s: %s', (id, text, said) => {
		const read = entry(id, text);
		if (read.is !== 'problem') throw new Error(read.is);
		expect(read.problem === said || read.problem.includes(said)).toBe(true);
		expect(read.problem).not.toMatch(/[[{]|null/);
	});

	test("lengths of circuits are in the sheet's units, and kept in feet", () => {
		const row = (text: string, units: UnitSet) => {
			const read = entry('harness.circuits', `lamp;;;done;1 A;${text}`, units);
			return read.is === 'answer' ? (read.answer.value as { length: number }[])[0]!.length : read.is;
		};
		// 1 ft = 0.3048 m exactly (international foot, 1959).
		expect([row('3', 'us'), row('3', 'metric'), row('3 m', 'us')]).toEqual([3, 9.843, 9.843]);
	});
});
