import { oilPressureNeeded } from '../../physics/oil-pressure.ts';
import { ringGapNeeded } from '../../physics/ring-gap.ts';
import { quantity } from '../quantity.ts';

export const ringGap = quantity({
	id: 'engine.ring_gap_needed',
	label: 'ring gap needed',
	kind: 'length',
	inputs: ['engine.bore', 'boost.kind', 'boost.target', 'build.use'],
	formula: {
		us: 'bore x 0.0045 street unboosted, 0.0050 hard use, 0.0060 to 12 psi, 0.0070 above',
		metric: 'bore x 0.0045 street unboosted, 0.0050 hard use, 0.0060 to 0.83 bar, 0.0070 above',
	},
	source: ['practice'],
	nature: 'estimate',
	compute: q => {
		const bore = q.number('engine.bore');
		const kind = q.choice('boost.kind');
		if (kind !== undefined && kind !== 'none')
			return ringGapNeeded(bore, { boost: q.number('boost.target'), hard: true });
		const use = q.choice('build.use');
		return ringGapNeeded(bore, { boost: 0, hard: use !== 'street' && use !== 'off-road' });
	},
});

const oil = { kind: 'pressure', inputs: [], source: ['practice'], nature: 'estimate' } as const;

export const oilAt3000 = quantity({
	...oil,
	id: 'engine.oil_pressure_needed',
	label: 'oil pressure needed at 3000 rpm',
	formula: { us: '10 psi per 1000 rpm hot: at 3000 rpm', metric: '0.69 bar per 1000 rpm hot: at 3000 rpm' },
	compute: () => oilPressureNeeded(3000),
});

export const oilAtIdle = quantity({
	...oil,
	id: 'engine.oil_pressure_needed_idle',
	label: 'oil pressure needed at idle',
	formula: { us: 'never under 6 psi at idle, hot', metric: 'never under 0.41 bar at idle, hot' },
	compute: () => oilPressureNeeded(0),
});
