import type { Vocabulary } from '../../src/plugs/circuit.ts';
import type { Pin, PlugHalf } from '../../src/sheet/plugs.ts';

/** Two halves of one plug, made by chance: circuits at pins, then permuted, dropped, doubled and blanked on one half. */
export function randomHalves({ circuits }: Vocabulary, random: () => number, size = 24): PlugHalf[] {
	const some = (count: number) => Math.floor(random() * count);
	const plain = circuits.filter(({ id }) => id !== 'airbag');
	const pin = (at: number): Pin => {
		const kind = random();
		const name = String(at + 1);
		if (kind < 0.12) return { pin: name, circuit: 'empty' };
		if (kind < 0.17) return { pin: name, circuit: 'spare' };
		if (kind < 0.21) return { pin: name, circuit: '' };
		const circuit = plain[some(plain.length)]!;
		return {
			pin: name,
			circuit: random() < 0.5 ? circuit.id : circuit.title,
			...(random() < 0.2 ? { fed_here: random() < 0.5 } : {}),
		};
	};
	const engine = Array.from({ length: size }, (_, at) => pin(at));
	const car = engine.map((own, at): Pin => {
		const { fed_here: _, ...rest } = own;
		return random() < 0.6 ? rest : pin(at);
	});
	for (let swap = 0; swap < some(5); swap++) {
		const [a, b] = [some(size), some(size)];
		const [one, other] = [car[a]!, car[b]!];
		car[a] = { ...other, pin: one.pin };
		car[b] = { ...one, pin: other.pin };
	}
	const kept = car.filter(() => random() > 0.05);
	if (random() < 0.2) kept.push({ pin: String(1 + some(size)), circuit: plain[some(plain.length)]!.id });
	return [
		{ plug: 'dash', half: 'engine', pins: engine },
		{ plug: 'dash', half: 'car', pins: kept },
	];
}
