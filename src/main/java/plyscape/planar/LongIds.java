package plyscape.planar;

import java.util.Arrays;

/**
 * Numbers distinct long keys 0, 1, 2, ... in the order they are first seen. Open addressing, no
 * boxing.
 */
public final class LongIds {

  private long[] keys;
  private int[] slots;
  private int size;

  public LongIds(int expected) {
    keys = new long[Math.max(16, expected)];
    slots = new int[Integer.highestOneBit(Math.max(16, expected)) * 4];
    Arrays.fill(slots, -1);
  }

  /** Key of a pair of ints. */
  public static long pair(int high, int low) {
    return ((long) high << 32) | (low & 0xffffffffL);
  }

  /** The number of a key, given now if it is new. */
  public int id(long key) {
    int slot = find(key);
    if (slots[slot] >= 0) {
      return slots[slot];
    }
    if (size == keys.length) {
      keys = Arrays.copyOf(keys, size * 2);
    }
    keys[size] = key;
    slots[slot] = size++;
    if (size * 2 > slots.length) {
      grow();
    }
    return size - 1;
  }

  /** The number of a key, or -1. */
  int idOrNone(long key) {
    return slots[find(key)];
  }

  long key(int id) {
    return keys[id];
  }

  int high(int id) {
    return (int) (keys[id] >> 32);
  }

  int low(int id) {
    return (int) keys[id];
  }

  public int size() {
    return size;
  }

  private int find(long key) {
    long hash = key * 0x9E3779B97F4A7C15L;
    int slot = (int) (hash >>> 33) & (slots.length - 1);
    while (slots[slot] >= 0 && keys[slots[slot]] != key) {
      slot = (slot + 1) & (slots.length - 1);
    }
    return slot;
  }

  private void grow() {
    slots = new int[slots.length * 2];
    Arrays.fill(slots, -1);
    for (int i = 0; i < size; i++) {
      slots[find(keys[i])] = i;
    }
  }
}
