// What is said to a screen reader: one place, politely. The same words said again are said again.
class Say {
  now = $state("");
  private turn = false;
  say(words: string): void { this.turn = !this.turn; this.now = words + (this.turn ? "\u00a0" : ""); }
}

export const voice = new Say();
