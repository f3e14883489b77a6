import type { LogQuantity } from './quantity.ts';

const subjects = import.meta.glob<object>(['./run/*.ts', './pull/*.ts'], { eager: true });

/** Every quantity of a log that a file of `pull` or `run` exports: a new one is found by being there. */
export const logQuantities: readonly LogQuantity[] = Object.values(subjects).flatMap(subject =>
	Object.values(subject).filter(made => typeof made === 'object' && 'logged' in made),
);
