export { percent } from '../../core/units/percent.ts';
