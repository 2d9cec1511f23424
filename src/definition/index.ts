export * from './function-definition.ts';
export { tableFunction } from './table-function.ts';
export { compileDefinition, type CompiledDefinition } from './compiled-definition.ts';
export { checkedDefinition, definitionFaults } from './checked-definition.ts';
export { equationTree, type Rescale } from './equation.ts';
export { FAMILIES, type Family } from './families.ts';
export { spoken, unitOfParameter, valueWords } from './words.ts';
