import { limit, quantity } from '../quantity.ts';
import { boostLimitBase, varyingBoost } from './limit-ranges.ts';

/** Peak pressure that pistons live long under, Pa. Common practice, 10 % either way; forged ones are not the first to give out. */
export const pistonMost = quantity({
	id: 'engine.piston_pressure_most',
	label: 'highest cylinder pressure for the pistons',
	kind: 'absolute-pressure',
	unit: 'Pa',
	inputs: ['engine.pistons'],
	formula: '70 bar cast, 75 hypereutectic; forged: none',
	source: ['practice'],
	nature: 'estimate',
	band: [0.9, 1.1],
	compute: q => {
		const pistons = q.choice('engine.pistons');
		return pistons && (pistons === 'forged' ? null : pistons === 'cast' ? 70e5 : 75e5);
	},
});

export const pistons = limit({
	...boostLimitBase,
	id: 'engine.piston_boost_limit',
	label: 'piston boost limit',
	expensive: true,
	formula: 'the boost at which peak pressure reaches what cast or hypereutectic pistons stand',
	limit: { ...varyingBoost, until: 'engine.peak_pressure', reaches: 'engine.piston_pressure_most', rising: true },
});

/** Peak pressure that a composite head gasket lives long under, Pa. Common practice, 10 % either way. */
export const gasketMost = quantity({
	id: 'engine.gasket_pressure_most',
	label: 'highest cylinder pressure for the gasket',
	kind: 'absolute-pressure',
	unit: 'Pa',
	inputs: ['engine.head_gasket'],
	formula: '80 bar composite; multi-layer steel and copper: none, the clamp decides',
	source: ['practice'],
	nature: 'estimate',
	band: [0.9, 1.1],
	compute: q => {
		const gasket = q.choice('engine.head_gasket');
		return gasket && (gasket === 'composite' ? 80e5 : null);
	},
});

export const gasket = limit({
	...boostLimitBase,
	id: 'engine.gasket_boost_limit',
	label: 'head gasket boost limit',
	expensive: true,
	formula: 'the boost at which peak pressure reaches what a composite head gasket stands',
	limit: { ...varyingBoost, until: 'engine.peak_pressure', reaches: 'engine.gasket_pressure_most', rising: true },
});

/** Peak pressure that rods live long under, Pa. Common practice, 15 % either way, also by how they were treated. */
export const rodMost = quantity({
	id: 'engine.rod_pressure_most',
	label: 'highest cylinder pressure for the rods',
	kind: 'absolute-pressure',
	unit: 'Pa',
	inputs: ['engine.rods'],
	formula: '100 bar as the engine was built; forged for racing: none',
	source: ['practice'],
	nature: 'estimate',
	band: [0.85, 1.15],
	compute: q => {
		const rods = q.choice('engine.rods');
		return rods && (rods === 'as-built' ? 100e5 : null);
	},
});

export const rods = limit({
	...boostLimitBase,
	id: 'engine.rod_boost_limit',
	label: 'rod boost limit',
	expensive: true,
	formula: 'the boost at which peak pressure reaches what rods of the engine as it was built stand',
	limit: { ...varyingBoost, until: 'engine.peak_pressure', reaches: 'engine.rod_pressure_most', rising: true },
});

/** Peak pressure that a block lives long under, Pa. Common practice, 15 % either way: light blocks split along the lifter valley. */
export const blockMost = quantity({
	id: 'engine.block_pressure_most',
	label: 'highest cylinder pressure for the block',
	kind: 'absolute-pressure',
	unit: 'Pa',
	inputs: ['engine.block'],
	formula: '95 bar a light production block, 115 a heavy one; made for racing: none',
	source: ['practice'],
	nature: 'estimate',
	band: [0.85, 1.15],
	compute: q => {
		const block = q.choice('engine.block');
		return block && (block === 'racing' ? null : block === 'light' ? 95e5 : 115e5);
	},
});

export const block = limit({
	...boostLimitBase,
	id: 'engine.block_boost_limit',
	label: 'block boost limit',
	expensive: true,
	formula: 'the boost at which peak pressure reaches what the block stands',
	limit: { ...varyingBoost, until: 'engine.peak_pressure', reaches: 'engine.block_pressure_most', rising: true },
});
