import { unitTable } from '../unit.ts';

/** Kelvin a degree Fahrenheit, and 0 degC in K: both by definition (NIST SP 811, B.8). */
const [fahrenheit, ice] = [5 / 9, 273.15];

const degF = ['F', 'deg F', 'degrees F', 'fahrenheit'];
const degC = ['C', 'deg C', 'degrees C', 'celsius', 'centigrade'];

export const temperature = unitTable('temperature', {
	degF: { factor: fahrenheit, offset: ice - 32 * fahrenheit, partner: 'degC', also: degF },
	degC: { factor: 1, offset: ice, partner: 'degF', also: degC },
	K: { factor: 1, partner: 'degF', also: ['kelvin'] },
});

/** How much warmer, not how warm: 9 degF of difference are 5 K. */
export const temperatureDifference = unitTable('temperature-difference', {
	degF: { factor: fahrenheit, partner: 'degC', also: degF },
	degC: { factor: 1, partner: 'degF', also: degC },
	'K diff': { factor: 1, partner: 'degF', also: ['K', 'kelvin'] },
});
