/** A word that nobody can guess, made anew at each call: 16 random bytes in base 64 (W3C CSP Level 3, nonce-source). */
export function freshNonce(): string {
  return btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))));
}
