import { expect, it } from 'vitest';
import { film } from '../support/film.ts';

it('the film coefficient is 3.26 W/m2K at 1 m, 1 kPa, 1 K and 1 m/s, and follows its four exponents', () => {
	expect(film(1, 1000, 1, 1)).toBeCloseTo(3.26, 12);
	const usual = film(0.1, 40e5, 2000, 20);
	expect(film(0.2, 40e5, 2000, 20) / usual).toBeCloseTo(2 ** -0.2, 12);
	expect(film(0.1, 80e5, 2000, 20) / usual).toBeCloseTo(2 ** 0.8, 12);
	expect(film(0.1, 40e5, 4000, 20) / usual).toBeCloseTo(2 ** -0.55, 12);
	expect(film(0.1, 40e5, 2000, 40) / usual).toBeCloseTo(2 ** 0.8, 12);
});
