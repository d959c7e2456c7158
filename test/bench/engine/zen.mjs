/**
 * The ten rules for @gorules/zen-engine: the same conditions as json-rules.mjs, written as one expression a rule in a decision
 * graph that is compiled once. The facts are gathered and counted by the same functions, before the graph is asked,
 * and dates go in as whole numbers, because its expressions do not compare dates kept as text.
 */
import { ZenEngine } from '@gorules/zen-engine';
import { aircraftFacts } from './json-rules-aircraft.mjs';
import { pilotFacts } from './json-rules-pilot.mjs';
import { requestFacts, RULES } from './json-rules.mjs';

const FACTS = { ...requestFacts, ...pilotFacts, ...aircraftFacts };
const ABOUT = [...new Set(['crew', ...RULES.map(({ about }) => about)])];

/** Makes the graph; `words` are the sentences. Gives an asynchronous (sheet, departs) => verdicts. */
export function zenRules(words) {
  const engine = new ZenEngine();
  const decision = engine.createDecision(graph());
  return async (sheet, departs) => {
    const values = await gathered(sheet, departs);
    const context = Object.fromEntries(ABOUT.map((fact) => [fact, withNumbers(values[fact])]));
    context.endsOn = numberOf(values.endsOn);
    const { result } = await decision.evaluate(context);
    return RULES.map(({ rule, about, always = {}, branches }, index) => {
      const branch = result[`rule${index}`];
      const of = values[about];
      if (branch === 'unknown')
        return { rule, status: 'unknown', says: `Cannot tell: ${of.unknown}.`, conditions: [] };
      const [status] = { ...always, ...branches }[branch];
      return {
        rule,
        status,
        says: words[rule][branch](of),
        conditions: status === 'met' ? (of.conditions ?? []) : [],
      };
    });
  };
}

/** All facts of a sheet, each worked out once. */
async function gathered(sheet, departs) {
  const known = new Map([
    ['sheet', sheet],
    ['departs', departs],
  ]);
  const almanac = {
    factValue(name) {
      if (!known.has(name)) known.set(name, FACTS[name]({}, almanac));
      return known.get(name);
    },
  };
  const values = {};
  for (const name of [...ABOUT, 'endsOn']) values[name] = await almanac.factValue(name);
  return values;
}

const numberOf = (date) => Number(date.replaceAll('-', ''));

/** Gives the expressions a number beside each date they compare. */
function withNumbers(values) {
  const { through } = values;
  const isDate = typeof through === 'string' && through.length === 10;
  return { ...values, throughNumber: isDate ? numberOf(through) : null };
}

function graph() {
  const expressions = RULES.map((rule, index) => ({
    id: `${index}`,
    key: `rule${index}`,
    value: expressionOf(rule),
  }));
  const node = (id, type, content = {}) => ({ id, type, name: id, position: { x: 0, y: 0 }, content });
  return {
    nodes: [
      node('in', 'inputNode'),
      node('rules', 'expressionNode', { expressions }),
      node('out', 'outputNode'),
    ],
    edges: [
      { id: 'a', sourceId: 'in', targetId: 'rules', type: 'edge' },
      { id: 'b', sourceId: 'rules', targetId: 'out', type: 'edge' },
    ],
  };
}

function expressionOf({ about, always = {}, branches }) {
  const first = Object.entries(always).map(([branch, [, all]]) => `${every(all)} ? '${branch}' : `);
  const unknown = `${about}.unknown != null ? 'unknown' : `;
  const rest = Object.entries(branches).map(([branch, [, all]]) => `${every(all)} ? '${branch}' : `);
  return `${first.join('')}${unknown}${rest.join('')}'none'`;
}

const every = (conditions) => `(${conditions.map(condition).join(' and ')})`;

const SIGNS = {
  equal: '==',
  notEqual: '!=',
  greaterThan: '>',
  greaterThanInclusive: '>=',
  lessThan: '<',
  lessThanInclusive: '<=',
};

function condition(one) {
  if (one.any) return `(${one.any.map(condition).join(' or ')})`;
  if (one.all) return every(one.all);
  if (one.not) return `(not ${condition(one.not)})`;
  const { fact, path, operator, value } = one;
  if (operator === 'lastsThrough')
    return `(${fact}.throughNumber != null and ${fact}.throughNumber >= endsOn)`;
  if (operator === 'endsBefore') return `(${fact}.throughNumber != null and ${fact}.throughNumber < endsOn)`;
  return `${fact}.${path} ${SIGNS[operator]} ${literal(value)}`;
}

function literal(value) {
  if (value === null || typeof value === 'number' || typeof value === 'boolean') return `${value}`;
  return typeof value === 'string' ? `'${value}'` : `${value.fact}.${value.path}`;
}
