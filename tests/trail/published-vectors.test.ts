import { base64url, CompactSign, calculateJwkThumbprint, compactVerify, importJWK } from "jose";
import { describe, expect, test } from "vitest";
import { canonicalJson } from "@/lib/trail/chain";
import { checkDetached, signDetached } from "@/lib/trail/jws";

describe("canonical JSON as RFC 8785 has it", () => {
  // RFC 8785, 3.2.2 and 3.2.3: the sample and its canonical form.
  test("the sample of section 3.2.2", () => {
    const sample = JSON.parse(String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`);
    expect(canonicalJson(sample)).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
  });

  test("the sample of section 3.2.3: keys in the order of their UTF-16 code units", () => {
    const sample = {
      "\u20ac": "Euro Sign",
      "\r": "Carriage Return",
      "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "1": "One",
      "\u{1f600}": "Emoji: Grinning Face",
      "\u0080": "Control",
      "\u00f6": "Latin Small Letter O With Diaeresis",
    };
    expect(Object.values(JSON.parse(canonicalJson(sample)) as object)).toHaveLength(7);
    expect([...canonicalJson(sample).matchAll(/:"([^"]+)"/g)].map(([, value]) => value)).toEqual([
      "Carriage Return",
      "One",
      "Control",
      "Latin Small Letter O With Diaeresis",
      "Euro Sign",
      "Emoji: Grinning Face",
      "Hebrew Letter Dalet With Dagesh",
    ]);
  });

  // RFC 8785, appendix B: numbers by their IEEE 754 bits.
  test.each([
    ["0000000000000000", "0"],
    ["8000000000000000", "0"],
    ["0000000000000001", "5e-324"],
    ["8000000000000001", "-5e-324"],
    ["7fefffffffffffff", "1.7976931348623157e+308"],
    ["ffefffffffffffff", "-1.7976931348623157e+308"],
    ["4340000000000000", "9007199254740992"],
    ["c340000000000000", "-9007199254740992"],
    ["4430000000000000", "295147905179352830000"],
    ["44b52d02c7e14af5", "9.999999999999997e+22"],
    ["44b52d02c7e14af6", "1e+23"],
    ["44b52d02c7e14af7", "1.0000000000000001e+23"],
    ["444b1ae4d6e2ef4e", "999999999999999700000"],
    ["444b1ae4d6e2ef4f", "999999999999999900000"],
    ["444b1ae4d6e2ef50", "1e+21"],
    ["3eb0c6f7a0b5ed8c", "9.999999999999997e-7"],
    ["3eb0c6f7a0b5ed8d", "0.000001"],
    ["41b3de4355555553", "333333333.3333332"],
    ["41b3de4355555554", "333333333.33333325"],
    ["41b3de4355555555", "333333333.3333333"],
    ["41b3de4355555556", "333333333.3333334"],
    ["41b3de4355555557", "333333333.33333343"],
    ["becbf647612f3696", "-0.0000033333333333333333"],
    ["43143ff3c1cb0959", "1424953923781206.2"],
  ])("%s is %s", (bits, text) => {
    expect(canonicalJson(Buffer.from(bits, "hex").readDoubleBE(0))).toBe(text);
  });

  test("what is no number has no form", () => {
    expect(() => canonicalJson(Number.NaN)).toThrow();
    expect(() => canonicalJson(Number.POSITIVE_INFINITY)).toThrow();
  });
});

// RFC 8037, appendix A.
const d = "nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A";
const x = "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo";
const kid = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k";
const jwk = { kty: "OKP", crv: "Ed25519", x } as const;
const content = "Example of Ed25519 signing";
const signature = "hgyY0il_MGCjP0JzlnLWG1PPOt7-09PGcvMg3AIbQR6dWbhijcNR4ki4iylGjg5BhVsPt9g7sVvpAr_MuM0KAg";
const whole = `eyJhbGciOiJFZERTQSJ9.${base64url.encode(content)}.${signature}`;

describe("Ed25519 as RFC 8037 has it", () => {
  test("A.3: the thumbprint that names the key", async () => {
    expect(await calculateJwkThumbprint(jwk)).toBe(kid);
  });

  test("A.4: the library signs the example as it stands there", async () => {
    const key = await importJWK({ ...jwk, d }, "EdDSA");
    const made = await new CompactSign(new TextEncoder().encode(content)).setProtectedHeader({ alg: "EdDSA" }).sign(key);
    expect(made).toBe(whole);
  });

  test("A.5: and takes it for good, with one byte changed for bad", async () => {
    const key = await importJWK(jwk, "EdDSA");
    await expect(compactVerify(whole, key, { algorithms: ["EdDSA"] })).resolves.toBeDefined();
    await expect(compactVerify(whole.replace("RXhh", "RXhi"), key, { algorithms: ["EdDSA"] })).rejects.toThrow();
  });

  test("ours is the same signature but for its detached content and the name of the key", async () => {
    const from = "2026-01-01T00:00:00.000Z";
    const made = await signDetached(content, { ...jwk, d, kid, from });
    expect(made).toMatch(/^[\w-]+\.\.[\w-]{86}$/);
    const keys = [{ ...jwk, kid, from }];
    expect(await checkDetached(content, made, keys)).toMatchObject({ state: "holds" });
    expect(await checkDetached(`${content}.`, made, keys)).toEqual({ state: "does not hold" });
    expect(await checkDetached(content, made, [])).toEqual({ state: "unknown key", kid });
  });

  test("what is no signature of ours does not hold: no header, another algorithm, a content of its own", async () => {
    const keys = [{ ...jwk, kid, from: "2026-01-01T00:00:00.000Z" }];
    const none = base64url.encode(JSON.stringify({ alg: "none", kid }));
    const hmac = base64url.encode(JSON.stringify({ alg: "HS256", kid }));
    for (const bent of ["", "..", "a.b.c", whole, `${none}..`, `${none}..${signature}`, `${hmac}..${signature}`])
      expect(await checkDetached(content, bent, keys)).toEqual({ state: "does not hold" });
    // Without a name no key is tried.
    expect(await checkDetached(content, `eyJhbGciOiJFZERTQSJ9..${signature}`, keys)).toEqual({
      state: "unknown key",
      kid: undefined,
    });
  });
});
