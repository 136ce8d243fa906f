package nullplane.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** A fixed number of threads that end with the program. */
final class Workers implements AutoCloseable {
  private static final long PATIENCE_S = 5;

  private final ExecutorService executor;

  Workers(int threads) {
    executor =
        Executors.newFixedThreadPool(
            threads,
            task -> {
              Thread thread = new Thread(task, "worker");
              thread.setDaemon(true);
              return thread;
            });
  }

  /** Returns the threads. */
  ExecutorService executor() {
    return executor;
  }

  /**
   * Runs tasks and returns their results in the tasks' order. The first fault ends it all and is
   * thrown on.
   */
  <T> List<T> all(List<Callable<T>> tasks) {
    List<Future<T>> futures = new ArrayList<>();
    for (Callable<T> task : tasks) {
      futures.add(executor.submit(task));
    }
    List<T> results = new ArrayList<>();
    try {
      for (Future<T> future : futures) {
        results.add(future.get());
      }
    } catch (ExecutionException e) {
      futures.forEach(future -> future.cancel(false));
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException("a task failed", e.getCause());
    } catch (InterruptedException e) {
      futures.forEach(future -> future.cancel(false));
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while waiting for a task", e);
    }
    return results;
  }

  /** Runs a task for each index from 0 to before a count. */
  void each(int count, IntConsumer task) {
    List<Callable<Integer>> tasks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int index = i;
      tasks.add(
          () -> {
            task.accept(index);
            return index;
          });
    }
    all(tasks);
  }

  /** Runs tasks as {@link #all(List)} does and counts each that is done. */
  <T> List<T> all(List<Callable<T>> tasks, ProgressLine progress) {
    List<Callable<T>> counted = new ArrayList<>();
    for (Callable<T> task : tasks) {
      counted.add(
          () -> {
            T result = task.call();
            progress.step();
            return result;
          });
    }
    return all(counted);
  }

  /**
   * Makes the contents of files and returns them by name, in the names' order.
   *
   * @param parts what makes each file
   * @param progress counts the files that are made
   */
  SortedMap<String, byte[]> make(SortedMap<String, Supplier<byte[]>> parts, ProgressLine progress) {
    List<String> names = List.copyOf(parts.keySet());
    List<Callable<byte[]>> tasks = new ArrayList<>();
    for (Supplier<byte[]> part : parts.values()) {
      tasks.add(part::get);
    }
    List<byte[]> contents = all(tasks, progress);
    SortedMap<String, byte[]> files = new TreeMap<>();
    for (int i = 0; i < names.size(); i++) {
      files.put(names.get(i), contents.get(i));
    }
    return files;
  }

  /** Lets running tasks end, for a few seconds at most, so that what they hold is free again. */
  @Override
  public void close() {
    executor.shutdownNow();
    try {
      if (!executor.awaitTermination(PATIENCE_S, TimeUnit.SECONDS)) {
        return; // the threads end with the process
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
