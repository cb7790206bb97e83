/** Compares names as people write them: "mail" and "the post office", "Laboratory" and "the lab". */
export function isSameHolder(a: string, b: string): boolean {
  const plain = (name: string) => {
    const words = name.trim().toLowerCase().replaceAll(/\s+/g, ' ').replace(/^the /, '');
    if (/^(?:mail|post(?: office)?|postal service)$/.test(words)) return 'mail';
    return /^lab\b|^laborator/.test(words) ? 'lab' : words;
  };
  return plain(a) === plain(b);
}
