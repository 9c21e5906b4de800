// What the place Measure shows on the right, and what only its page of the finished car knows.
export { FinishedCar } from './gauge/finished-car.svelte.ts';
export { default } from './MeasureColumn.svelte';
