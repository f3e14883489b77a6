import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plugProblems } from '../../src/sheet/check-plugs.ts';
import { halfFields, pinFields } from '../../src/sheet/plug-fields.ts';
import { sheetSchema } from '../../src/sheet/schema.ts';
import { seed } from '../counts.ts';

const problems = (plugs: unknown) => [...plugProblems(plugs)];
const half = (change: Record<string, unknown> = {}) => ({
	plug: 'dash',
	half: 'engine',
	pins: [{ pin: '1' }],
	...change,
});
const withPin = (change: Record<string, unknown>) => [half({ pins: [{ pin: '14', ...change }] })];

const whole = half({
	mates: 'body',
	mates_by: 'pin',
	from: '1998 wagon loom',
	view: 'face',
	keyed: 'mates',
	lock: 'holds',
	outside: true,
	pins: [
		{
			pin: 'A7',
			wire: 'green/white',
			circuit: 'coolant temperature',
			gauge: '0.75 mm2',
			joined: true,
			known: 'paperwork',
			note: '',
			meets: '14',
			fed_here: false,
			sort: 'signal-0-5v',
			splice: 's1',
			terminal: 2.8,
			fused: 'link',
			class: 'GXL',
			twisted: true,
			seal: true,
			grounded_at: 'engine',
		},
	],
});

test('every key that there is, is taken', () => {
	expect(problems([whole])).toEqual([]);
	expect(Object.keys(whole).sort()).toEqual(Object.keys(halfFields).sort());
	expect(Object.keys(whole.pins[0]!).sort()).toEqual(Object.keys(pinFields).sort());
});

describe('what is refused names its place, what was found and what is accepted', () => {
	test.each([
		['no list', {}, 'plugs', /a list of halves/],
		['sixty-one halves', Array.from({ length: 61 }, (_, at) => half({ plug: `p${at}` })), 'plugs', /at most 60/],
		['a text for a half', ['dash'], 'plugs[0]', /a half of a plug/],
		['no name', [half({ plug: ' ' })], 'plugs[0].plug', /1 to 200 characters/],
		['another side', [half({ half: 'body' })], 'plugs[0].half', /engine, car, controller/],
		['no pins', [half({ pins: undefined })], 'plugs[0].pins', /a list of pins/],
		[
			'too many pins',
			[half({ pins: Array.from({ length: 501 }, (_, at) => ({ pin: `${at}` })) })],
			'plugs[0].pins',
			/500/,
		],
		['a key that is none', [half({ color: 'red' })], 'plugs[0].color', /only plug, half/],
		['a prototype', JSON.parse('[{"plug":"d","half":"car","pins":[],"__proto__":{}}]'), 'plugs[0].__proto__', /only/],
		['a half that stands twice', [half(), half({ plug: ' Dash' })], 'plugs[1]', /each half of a plug once/],
		['a number for a pin', withPin({ pin: 14 }), 'plugs[0].pins[0].pin', /like "14"/],
		['a pin without its name', [half({ pins: [{}] })], 'plugs[0].pins[0].pin', /like "14"/],
		['a half gauge', withPin({ gauge: 17.5 }), 'plugs[0].pins[0].gauge', /whole gauge/],
		['a word for yes', withPin({ joined: 'yes' }), 'plugs[0].pins[0].joined', /true or false/],
		['another sort', withPin({ sort: 'hot' }), 'plugs[0].pins[0].sort', /battery, switched/],
		['a blade of a foot', withPin({ terminal: 300 }), 'plugs[0].pins[0].terminal', /mm/],
		['a fuse of nothing', withPin({ fused: 0 }), 'plugs[0].pins[0].fused', /over 0/],
		['a key of a pin that is none', withPin({ colour: 'red' }), 'plugs[0].pins[0].colour', /only pin, wire/],
	])('%s', (_, plugs, path, accepted) => {
		const [first, ...others] = problems(JSON.parse(JSON.stringify(plugs)));
		expect(others).toEqual([]);
		expect(first?.path).toBe(path);
		expect(first?.accepted).toMatch(accepted);
		expect(first?.found).not.toBe('');
	});

	test('everything in one go', () => {
		const plugs = [half({ half: 'x', pins: [{ pin: '', joined: 1 }, 7] })];
		expect(problems(plugs).map(({ path }) => path)).toEqual([
			'plugs[0].half',
			'plugs[0].pins[0].pin',
			'plugs[0].pins[0].joined',
			'plugs[0].pins[1]',
		]);
	});
});

describe('the schema for editors', () => {
	const { properties } = sheetSchema([]) as { properties: { plugs: object } };
	const fits = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(properties.plugs);

	test('takes what the checks take', () => {
		expect(fits([whole])).toBe(true);
	});

	// A gauge in words is the one thing that a schema cannot check.
	const anything = (key: string) =>
		fc.oneof(fc.string(), fc.integer(), fc.double(), fc.boolean(), fc.constant(null), fc.constant([]), some(key));
	const some = (key: string) => fc.constantFrom(...[{ ...whole, ...whole.pins[0] }[key as 'pin']]);

	test.each(Object.keys(halfFields).filter(key => key !== 'pins'))(
		'and the checks say the same of the key %s of a half',
		key => {
			fc.assert(
				fc.property(
					anything(key),
					value => fits([half({ [key]: value })]) === (problems([half({ [key]: value })]).length === 0),
				),
				{ seed, numRuns: 60 },
			);
		},
	);

	test.each(Object.keys(pinFields))('and of the key %s of a pin', key => {
		fc.assert(
			fc.property(anything(key), value => {
				if (key === 'gauge' && typeof value === 'string') return true;
				return fits(withPin({ [key]: value })) === (problems(withPin({ [key]: value })).length === 0);
			}),
			{ seed, numRuns: 60 },
		);
	});
});
