import { describe, expect, test } from 'vitest';
import { figured, unmarkedFigure } from '../../../src/rulebook/compile/figures.ts';

const read = (text: string) => {
	const refused: string[] = [];
	return { text: figured(text, message => refused.push(message)), refused };
};
const metric = (text: string) => {
	const { text: both, refused } = read(text);
	expect(refused).toEqual([]);
	return typeof both === 'string' ? both : both.metric;
};

describe('a marked figure in the other unit set, rounded as roughly as it was said', () => {
	// By the definitions of the units (NIST SP 811, appendix B): 25.4 mm, 0.3048 m, 6894.757 Pa, 1.609344 km, 1.355818 N m,
	// 0.45359237 kg, 745.6999 W; the rounding is our own.
	test.each([
		['Keep {=4 in}.', 'Keep 100 mm.'],
		['{=1/2 in} hose', '13 mm hose'],
		['{=1 1/2 in} of pipe', '38 mm of pipe'],
		['walls of {=0.065, 0.083 and 0.095 in}', 'walls of 1.65, 2.1 and 2.42 mm'],
		['{=6 to 10 psi}', '0.4 to 0.7 bar'],
		['{=43.5 psi}', '3 bar'],
		['{=1 psi}', '0.07 bar'],
		['at {=30 and 60 mph}', 'at 50 and 100 km/h'],
		['after {=50 miles}', 'after 80 km'],
		['within {=10 ft}', 'within 3 m'],
		['at {=15 lb-ft}', 'at 20 N m'],
		['{=100 hp} more', '75 kW more'],
		['weighs {=40 lb}', 'weighs 18 kg'],
		['at {=230 degF}', 'at 110 degC'],
		['under {=212 degF}', 'under 100 degC'],
		['about {=-40 degF}', 'about -40 degC'],
		['within {=18 degF, difference}', 'within 10 degC'],
		['{=0 psi}', '0 bar'],
		['{=8000 pulses/mi}', '5000 pulses/km'],
	])('%s', (us, other) => expect(metric(us)).toBe(other));

	test('the text itself stays as it was said, without the marks', () => {
		expect(read('Keep {=4 in}, {value} or more.').text).toEqual({
			us: 'Keep 4 in, {value} or more.',
			metric: 'Keep 100 mm, {value} or more.',
		});
		expect(read('Nothing to turn.').text).toBe('Nothing to turn.');
	});

	test('a figure that was said in metric is turned round', () => {
		expect(read('about {=5 mm}').text).toEqual({ us: 'about 0.2 in', metric: 'about 5 mm' });
	});

	test('both by hand, and a designation that every reader gets', () => {
		expect(metric('{=65 mph|105 km/h}')).toBe('105 km/h');
		expect(metric('{=19 to 30 lb/h|200 to 315 cc/min}')).toBe('200 to 315 cc/min');
		expect(read('{=105 degC, both} insulation').text).toEqual({
			us: '105 degC insulation',
			metric: '105 degC insulation',
		});
	});
});

test.each([
	['{=4 in|110 mm}', 'not the same within 5 %: the first is 100 mm'],
	['{=4 in|1 bar}', 'not the same'],
	['{=4 to 6 in|100 mm}', 'not the same'],
	['{=180 degF|90 degC}', 'not the same'],
	['{=10 degF|12 degC, difference}', 'not the same'],
	['{=100 mm|4 in}', 'the US figure comes first'],
	['{=4}', 'no figure with a unit'],
	['{=four in}', 'no figure with a unit'],
	['{=4 in|100 mm|10 cm}', 'one figure, or a US one and a metric one'],
])('%s is refused', (mark, why) => {
	const { refused } = read(`Keep ${mark} here.`);
	expect(refused).toHaveLength(1);
	expect(refused[0]).toContain(why);
	expect(refused[0]).toContain(mark);
});

test.each([
	['Keep 4 in from it.', '4 in'],
	['a 3-in pipe', '3-in'],
	['about 60 psi', '60 psi'],
	['half an inch of air', 'half an inch'],
	['a few thou under', 'few thou'],
	['it rises psi for psi', 'psi'],
	['a litre of engine', 'a litre'],
])('unmarked in %s', (text, found) => expect(unmarkedFigure(text)).toContain(found));

test.each([
	'three pulls, 3 in a row',
	'76 in 100',
	'a 3/8 line',
	'hose printed 30R9',
	'10 A, 12 V, 3000 rpm, 15 deg',
	'12 to 10 AWG',
	'{=4 in} from it',
	'{boost.target} over',
])('nothing to mark in %s', text => expect(unmarkedFigure(text)).toBeNull());
