import type { Cylinder } from '../../physics/slider-crank.ts';
import { clearanceVolume, effectiveRatio, ratioFromVolumes } from '../../physics/volumes.ts';
import { quantity } from '../quantity.ts';

const volumes = [
	'engine.bore',
	'engine.stroke_used',
	'engine.chamber_volume',
	'engine.piston_volume',
	'engine.gasket_thickness',
	'engine.gasket_bore',
	'engine.deck_clearance',
] as const;

const volumesOf = (q: { number(id: (typeof volumes)[number]): number }) => ({
	bore: q.number('engine.bore'),
	stroke: q.number('engine.stroke_used'),
	chamber: q.number('engine.chamber_volume'),
	piston: q.number('engine.piston_volume'),
	gasketThickness: q.number('engine.gasket_thickness'),
	gasketBore: q.number('engine.gasket_bore'),
	deck: q.number('engine.deck_clearance'),
});

export const clearance = quantity({
	id: 'engine.clearance_volume',
	label: 'clearance volume',
	kind: 'volume',
	inputs: volumes,
	formula: 'chamber + piston (dish +, dome -) + gasket + deck',
	source: ['geometry'],
	nature: 'exact',
	compute: q => clearanceVolume(volumesOf(q)),
});

export const fromVolumes = quantity({
	id: 'engine.ratio_from_volumes',
	label: 'compression ratio from the volumes',
	shown: { us: ':1', metric: ':1' },
	kind: 'ratio',
	inputs: volumes,
	range: [1, null],
	formula: '(swept + clearance) / clearance',
	source: ['geometry'],
	nature: 'exact',
	compute: q => ratioFromVolumes(volumesOf(q)),
});

export const staticRatio = quantity({
	id: 'engine.static_ratio',
	label: 'static compression ratio',
	shown: { us: ':1', metric: ':1' },
	kind: 'ratio',
	inputs: ['engine.compression_ratio', 'engine.ratio_from_volumes'],
	range: [1, null],
	formula: 'compression ratio as answered; else from the volumes',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const byVolumes = !q.has('engine.compression_ratio') && q.has('engine.ratio_from_volumes');
		return q.number(byVolumes ? 'engine.ratio_from_volumes' : 'engine.compression_ratio');
	},
});

/** Bore, stroke, rod and ratio together, for everything that turns the crank. */
export const cylinder = quantity({
	id: 'engine.cylinder',
	label: 'cylinder',
	kind: 'hidden',
	inputs: ['engine.bore', 'engine.stroke_used', 'engine.rod', 'engine.static_ratio'],
	formula: 'bore, stroke, rod and ratio',
	source: ['geometry'],
	nature: 'exact',
	compute: q => {
		const cylinder: Cylinder = {
			bore: q.number('engine.bore'),
			stroke: q.number('engine.stroke_used'),
			rod: q.number('engine.rod'),
			ratio: q.number('engine.static_ratio'),
		};
		return cylinder as never;
	},
});

export const effective = quantity({
	id: 'engine.effective_compression_ratio',
	label: 'dynamic compression ratio',
	shown: { us: ':1', metric: ':1' },
	kind: 'ratio',
	inputs: ['engine.stroke_used', 'engine.rod', 'engine.static_ratio', 'engine.intake_closes'],
	range: [1, null],
	formula: 'V(intake closing) / clearance, slider-crank with rod',
	source: ['geometry'],
	nature: 'exact',
	compute: q => {
		const stroke = q.number('engine.stroke_used');
		const rod = q.number('engine.rod');
		const ratio = q.number('engine.static_ratio');
		// The bore cancels out: volumes are in proportion to it.
		return effectiveRatio({ bore: stroke, stroke, rod, ratio }, q.number('engine.intake_closes'));
	},
});
