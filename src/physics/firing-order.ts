import { highestReading, type Readings } from './compression.ts';
import { OutOfRange, within } from './range.ts';

/** How cylinders are numbered along the banks: 1-4 and 5-8, or odd and even. */
export type BankLayout = 'in-rows' | 'odd-and-even';

/** The two banks' cylinder numbers, each from one end of the engine to the other. Refuses an odd count, or under 2, or over 16. */
export function banksOf(layout: BankLayout, cylinders: number): [number[], number[]] {
	within('cylinders', cylinders, 2, 16);
	if (cylinders % 2 !== 0) throw new OutOfRange('cylinders', cylinders, 'an even count');
	const banks: [number[], number[]] = [[], []];
	for (let cylinder = 1; cylinder <= cylinders; cylinder++) {
		const first = layout === 'in-rows' ? cylinder <= cylinders / 2 : cylinder % 2 === 1;
		banks[first ? 0 : 1].push(cylinder);
	}
	return banks;
}

/**
 * The bank layout that a V8's firing order gives away, or null when it does not.
 *
 * On a cross-plane crank each bank's places in the order are 1, 2, 3, 2 apart, going round. The one layout in which that is
 * so is the engine's. Neither, both, a layout in which the banks take turns (a flat-plane crank), or another count of
 * cylinders: not known. Refuses an order that does not name each cylinder once. Common practice.
 */
export function layoutFromOrder(order: readonly number[]): BankLayout | null {
	checkOrder(order);
	if (order.length !== 8) return null;
	const layouts = ['in-rows', 'odd-and-even'] as const;
	const gaps = layouts.map(layout => gapsOf(order, banksOf(layout, 8)[0]));
	// Read backwards it is the same round, and what one bank leaves over is the same round for the other.
	const fitting = layouts.filter((_, i) => '12321232'.includes(gaps[i]!));
	return fitting.length === 1 && !gaps.includes('2222') ? fitting[0]! : null;
}

/** How far apart a bank's cylinders stand in the order, going round from the first of them. */
function gapsOf(order: readonly number[], bank: readonly number[]): string {
	const places = bank.map(cylinder => order.indexOf(cylinder)).sort((a, b) => a - b);
	return places.map((place, i) => (places[i + 1] ?? places[0]! + order.length) - place).join('');
}

/**
 * Pairs of neighbors in a bank that both read under a share (0 to 1) of the highest, lower number first: the sign of a gasket
 * gone between them. Never across the banks; a cylinder without a reading is in no pair.
 *
 * Refuses what `highestReading` and `banksOf` refuse. Common practice.
 */
export function lowNeighbors(readings: Readings, layout: BankLayout, share: number): [number, number][] {
	const limit = share * highestReading(readings);
	const isLow = (cylinder: number) => (readings[cylinder - 1] ?? limit) < limit;
	const pairs: [number, number][] = [];
	for (const bank of banksOf(layout, readings.length)) {
		for (let i = 1; i < bank.length; i++)
			if (isLow(bank[i - 1]!) && isLow(bank[i]!)) pairs.push([bank[i - 1]!, bank[i]!]);
	}
	return pairs;
}

/**
 * The pairs that share a coil on waste spark: cylinders half the firing order apart, whose pistons move together.
 *
 * In the order in which they fire. Refuses an order that does not name each cylinder once, or an odd count.
 */
export function companions(order: readonly number[]): [number, number][] {
	checkOrder(order);
	const half = order.length / 2;
	if (!Number.isInteger(half)) throw new OutOfRange('cylinders', order.length, 'an even count');
	return order.slice(0, half).map((cylinder, i) => [cylinder, order[i + half]!]);
}

function checkOrder(order: readonly number[]): void {
	within('cylinders in the firing order', order.length, 1, 16);
	const missing = order.findIndex((_, i) => !order.includes(i + 1));
	if (missing >= 0)
		throw new OutOfRange(
			`firing order ${order.join('-')}`,
			order.length,
			`each cylinder once: ${missing + 1} is missing`,
		);
}
