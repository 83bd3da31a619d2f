/** Addresses of the page's own scripts, as the policy header wants them: named by one rule, and by no other. */

interface Rule {
  createScriptURL(address: string): unknown;
}

interface Rules {
  createPolicy(name: string, rule: { createScriptURL: (address: string) => string }): Rule;
}

let rule: Rule | undefined;

/** @param address of a file of the page itself */
export function ownScript(address: string): unknown {
  const rules = (globalThis as { trustedTypes?: Rules }).trustedTypes;
  if (!rules) return address;
  rule ??= rules.createPolicy("own-script", {
    createScriptURL(given) {
      if (new URL(given, document.baseURI).origin !== location.origin)
        throw new TypeError(`${given} is no script of this page`);
      return given;
    },
  });
  return rule.createScriptURL(address);
}
