import type { AnyQuantity } from './quantity.ts';

const subjects = import.meta.glob<object>('./model/*.ts', { eager: true });

/** Every quantity that a file of the model exports: a new one is found by being there. */
export const quantities: readonly AnyQuantity[] = Object.values(subjects).flatMap(subject =>
	Object.values(subject).filter(made => typeof made === 'object' && 'formula' in made),
);
