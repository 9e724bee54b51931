import { type Expression, isFunctionName, isOperator, takesSeveral } from "../core/expression/sum.ts";

/** What is looked at of a node that the parser gives back. */
interface ParsedNode {
  readonly type: string;
  readonly op?: string;
  readonly name?: string;
  readonly implicit?: boolean;
  readonly fn?: ParsedNode | string;
  readonly content?: ParsedNode;
  readonly args?: readonly ParsedNode[];
}

type ParseText = (formula: string) => ParsedNode;

/** What a formula of `readSum` is made of: operands by number, our own functions, signs and brackets. */
const OWN_WORD = /^(?:q\d{1,4}|[-+*/^(),])$/;

let loading: Promise<ParseText> | undefined;

/** Loaded when first needed, and only the part that takes a text apart: nothing here can run one. */
async function parser(): Promise<ParseText> {
  loading ??= import("mathjs/number").then(({ create, parseDependencies }) => {
    const { parse } = create(parseDependencies ?? {}, {});
    return (formula) => parse(formula);
  });
  return loading;
}

/**
 * Takes a formula of `readSum` apart by the usual precedence. No text of a member gets here, and of what the
 * parser may return only figures, signs, brackets and our own functions pass; undefined for anything else.
 */
export async function parseFormula(formula: string): Promise<Expression | undefined> {
  if (!formula.split(" ").every((word) => OWN_WORD.test(word) || isFunctionName(word))) return undefined;
  const parse = await parser();
  try {
    return plain(parse(formula));
  } catch {
    return undefined;
  }
}

/** The parser's node as plain data, when it is one of the few kinds a sum is made of. */
function plain(node: ParsedNode | undefined): Expression | undefined {
  switch (node?.type) {
    case "ParenthesisNode":
      return plain(node.content);
    case "SymbolNode": {
      const index = /^q(\d{1,4})$/.exec(node.name ?? "")?.[1];
      return index === undefined ? undefined : { kind: "operand", index: Number(index) };
    }
    case "OperatorNode": {
      const [left, right, ...more] = allPlain(node.args);
      if (left === undefined || more.length > 0 || node.implicit === true) return undefined;
      if (right === undefined) return node.op === "-" ? { kind: "negative", of: left } : undefined;
      const operator = node.op ?? "";
      return isOperator(operator) ? { kind: "pair", operator, left, right } : undefined;
    }
    case "FunctionNode": {
      const name = typeof node.fn === "object" ? (node.fn.name ?? "") : "";
      const given = allPlain(node.args);
      const isCount = given.length === 1 || (given.length > 1 && isFunctionName(name) && takesSeveral(name));
      return isCount && isFunctionName(name) ? { kind: "call", name, given } : undefined;
    }
    default:
      return undefined;
  }
}

/** All parts, or none when one of them is nothing we know. */
function allPlain(nodes: readonly ParsedNode[] = []): readonly Expression[] {
  const parts = nodes.map(plain).filter((part) => part !== undefined);
  return parts.length === nodes.length ? parts : [];
}
