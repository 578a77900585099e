package dev.loopgauge.job.planned;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainBudget;
import dev.loopgauge.chain.Change;
import dev.loopgauge.chain.Notice;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChangeFormat;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.budget.BudgetDocument;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.signal.SampleRate;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Predicts the delay of each path of a chain file.
 *
 * @param chainFile the chain file
 * @param paths the paths to show, stage by stage; empty for all, in a line each
 * @param blockSize as if the host ran at this block size
 * @param rate as if everything ran at this rate
 * @param changes as if this were different, as {@code --change} takes it
 * @param rule what judges sound against picture
 * @param full whether the text lists everything, however long that is
 */
public record BudgetJob(
    Path chainFile,
    List<String> paths,
    Optional<Integer> blockSize,
    Optional<SampleRate> rate,
    List<String> changes,
    PictureRule rule,
    boolean full) {
  /** Copies the lists. */
  public BudgetJob {
    paths = List.copyOf(paths);
    changes = List.copyOf(changes);
  }

  /**
   * Predicts.
   *
   * @throws ChainFormatException when the file is not a chain
   * @throws UsageException when it can't be read, or what was asked for can't be
   */
  public Answer run() throws ChainFormatException {
    Chain chain = asAsked(ChainFile.read(chainFile));
    List<String> notes = new ArrayList<>();
    for (Notice notice : chain.notices()) {
      notes.add(note(notice));
    }
    BudgetDocument document = changes.isEmpty() ? budget(chain) : whatIf(chain);
    return Answer.inside(!document.isOver(), told(document.noting(notes)));
  }

  private Document told(BudgetDocument document) {
    if (!paths.isEmpty()) {
      return document.inStages();
    }
    return full ? document.inFull() : document;
  }

  /** Of the file only its name, as in all documents. */
  private String note(Notice notice) {
    String name = String.valueOf(chainFile.getFileName());
    return notice.text().replace(chainFile.toString(), name) + "; " + notice.hint();
  }

  private BudgetDocument whatIf(Chain chain) {
    List<String> told = new ArrayList<>();
    Chain changed = chain;
    for (String written : changes) {
      Change change = ChangeFormat.parse(written);
      told.add(change.told(changed));
      changed = change.on(changed);
    }
    return budget(changed).after(told, budget(chain));
  }

  private BudgetDocument budget(Chain chain) {
    Map<String, PathBudget> all = new LinkedHashMap<>();
    for (PathBudget budget : ChainBudget.all(chain)) {
      all.put(budget.name(), budget);
    }
    List<PathBudget> chosen = new ArrayList<>();
    for (String path : paths.isEmpty() ? all.keySet() : new LinkedHashSet<>(paths)) {
      chosen.add(all.get(chain.path(path).name()));
    }
    return BudgetDocument.of(chain, chosen, rule);
  }

  private Chain asAsked(Chain written) {
    Chain chain = rate.isPresent() ? written.withSampleRate(rate.get()) : written;
    try {
      return blockSize.isPresent() ? chain.withBlockSize(blockSize.get()) : chain;
    } catch (IllegalArgumentException e) {
      throw new UsageException(e.getMessage(), "give a block size that the host offers");
    }
  }
}
