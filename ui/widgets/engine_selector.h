#pragma once

#include "core/domain/engine_log.h"

#include <QComboBox>

#include <vector>

namespace coilbook {

/// Which engine the window shows. Made for two hundred of them: typing any part of a name narrows
/// the list, Enter takes the first that fits, Esc leaves everything as it was. Retired engines
/// stand at the end and say so.
class EngineSelector : public QComboBox {
    Q_OBJECT
public:
    explicit EngineSelector(QWidget* parent = nullptr);

    void setEngines(const std::vector<EngineSummary>& engines);

    /// Shows that engine as chosen, without telling.
    void setCurrentEngine(const EngineId& engine);

    /// Puts the cursor here with everything selected, ready for typing a part of a name.
    void startTyping();

    bool eventFilter(QObject* watched, QEvent* event) override;

Q_SIGNALS:
    /// The user chose.
    void engineChosen(const coilbook::EngineId& engine);
    /// The user is done here, with or without a choice.
    void left();

private:
    void choose(int index);
    void takeTyped();
    void giveUp();
    /// Enter and Esc; true when the key is done with.
    bool handleKey(int key);
    [[nodiscard]] EngineId engineAt(int index) const;

    EngineId m_current;
};

} // namespace coilbook
