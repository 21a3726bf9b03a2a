package plyscape.planar;

import java.util.Arrays;

/**
 * Numbers distinct long keys 0, 1, 2, ... in the order they are first seen. Open addressing, no
 * boxing; keys stand in the table itself, as most of the time goes to waiting for memory.
 */
public final class LongIds {

  private long[] keys;

  /** By slot a key, and its number plus 1, or 0. */
  private long[] slotKeys;

  private int[] slots;
  private int size;

  /** Makes room for about so many. */
  public LongIds(int expected) {
    keys = new long[Math.max(16, expected)];
    slots = new int[Integer.highestOneBit(Math.max(16, expected)) * 4];
    slotKeys = new long[slots.length];
  }

  /** Key of a pair of ints. */
  public static long pair(int high, int low) {
    return ((long) high << 32) | (low & 0xffffffffL);
  }

  /** The number of a key, given now if it is new. */
  public int id(long key) {
    int slot = find(key);
    if (slots[slot] > 0) {
      return slots[slot] - 1;
    }
    if (size == keys.length) {
      keys = Arrays.copyOf(keys, size * 2);
    }
    keys[size] = key;
    slotKeys[slot] = key;
    slots[slot] = ++size;
    if (size * 2 > slots.length) {
      grow();
    }
    return size - 1;
  }

  /** The number of a key, or -1. */
  public int idOrNone(long key) {
    return slots[find(key)] - 1;
  }

  int high(int id) {
    return (int) (keys[id] >> 32);
  }

  int low(int id) {
    return (int) keys[id];
  }

  /** How many keys there are. */
  public int size() {
    return size;
  }

  private int find(long key) {
    long hash = key * 0x9E3779B97F4A7C15L;
    int slot = (int) (hash >>> 33) & (slots.length - 1);
    while (slots[slot] > 0 && slotKeys[slot] != key) {
      slot = (slot + 1) & (slots.length - 1);
    }
    return slot;
  }

  private void grow() {
    slots = new int[slots.length * 2];
    slotKeys = new long[slots.length];
    for (int i = 0; i < size; i++) {
      int slot = find(keys[i]);
      slots[slot] = i + 1;
      slotKeys[slot] = keys[i];
    }
  }
}
